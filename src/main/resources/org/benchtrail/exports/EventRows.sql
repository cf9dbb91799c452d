-- The event log, a stretch at a time.

-- @ months
select e.month, count(*) as tickets, sum(t.entries) as entries
from (
  select distinct to_char(at at time zone :zone, 'YYYY-MM') as month, ticket from trail_entry
  where kind in ('closed', 'cancelled') and at >= :since
) e
join ticket t on t.serial = e.ticket
group by 1 order by 1 desc

-- @ tickets
select distinct ticket from trail_entry
where kind in ('closed', 'cancelled') and at >= :begins and at < :ends and ticket > :after
order by ticket limit :most

-- @ entries
select t.serial, t.category, t.priority, t.round, e.entry, e.at, e.actor, e.kind, e.canonical, e.hash, l.index as leaf
from ticket t
join trail_entry e on e.ticket = t.serial
left join seal_leaf l on l.stream = 'ticket/' || ticket_number(t.serial) and l.place = e.entry
where t.serial in (:tickets)
order by t.serial, e.entry

-- @ head
select note from checkpoint order by size desc limit 1

-- @ leaves
select size from checkpoint order by size desc limit 1

-- @ give
insert into export_given (month, ticket, format, person, at, head)
values (:month, cast(:ticket as integer), :format, :person, :at, :head)

-- @ given
select month, ticket, format, person, at from export_given order by id desc limit :most

-- @ given of
select month, ticket, format, person, at from export_given where ticket = :ticket order by id desc limit :most
