-- @ open tickets of
-- Those that somebody has, or took, opened or offered once and have handed on.
select serial from ticket where assignee = :person and standing = 'OPEN'
union
select t.serial from trail_entry e join ticket t on t.serial = e.ticket
where e.actor = :person and e.kind in ('handed-over', 'hand-over-offered', 'opened') and t.standing = 'OPEN' and t.assignee is not null
order by 1
