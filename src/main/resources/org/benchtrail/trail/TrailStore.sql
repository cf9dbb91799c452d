-- The trail: entries are added and read, and nothing else.

-- @ append
insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash)
values (:ticket, :entry, :at, :actor, :kind, :canonical, :hash)

-- @ read
-- In one statement, so that nobody's act can fall between the row, the trail and what of it is sealed.
select t.serial as ticket, t.entries as expected, t.last_hash, s.place as sealed, encode(s.hash, 'hex') as sealed_hash,
  e.entry, e.at, e.actor, e.kind, e.canonical, e.hash
from ticket t
left join lateral (select place, hash from seal_leaf l where l.stream = 'ticket/' || ticket_number(t.serial)
  order by place desc limit 1) s on true
left join trail_entry e on e.ticket = t.serial
where t.serial in (:tickets)
order by t.serial, e.entry
