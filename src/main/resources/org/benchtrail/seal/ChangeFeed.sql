-- @ size
select size from seal_head

-- @ after
-- leaves are numbered from 0, changes from 1
select l.index + 1 as number, e.ticket, e.entry, e.kind, e.at, e.actor as by
from seal_leaf l
join trail_entry e on e.ticket = cast(substring(l.stream from '^ticket/([0-9]+)') as integer) and e.entry = l.place
where l.index >= :after and l.index < :size
order by l.index
limit :most
