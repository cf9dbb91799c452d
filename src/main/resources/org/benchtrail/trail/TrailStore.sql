-- The trail: entries are added and read, and nothing else.

-- @ append
insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash)
values (:ticket, :entry, :at, :actor, :kind, :canonical, :hash)

-- @ read
select entry, at, actor, kind, canonical, hash
from trail_entry
where ticket = :ticket
order by entry
