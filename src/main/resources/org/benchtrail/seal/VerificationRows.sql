-- @ end forgotten
update verification_run set ended = :now, stopped = true, interrupted = true where ended is null and seen < :before

-- @ alone
select pg_try_advisory_xact_lock(7203)

-- @ due
select not exists (select from verification_run where ended is null) and coalesce(
  (select r.interrupted and (r.again is null or r.started < :again) or r.started < :before
    from verification_run r order by r.id desc limit 1),
  (select signed_at < :before from checkpoint order by size limit 1), false)

-- @ begin
insert into verification_run (started, seen, by, size, again)
values (:now, :now, :by, :size, (select case when interrupted then id end from verification_run order by id desc limit 1))
on conflict do nothing

-- @ newest
select id, started, ended, by, size, done, stopped, interrupted, again from verification_run order by id desc limit 1

-- @ go on
update verification_run set seen = :now, done = :done where id = :id and not stopped

-- @ stop
update verification_run set stopped = true where ended is null

-- @ interrupt
update verification_run set stopped = true, interrupted = true where id = :id and ended is null and not stopped

-- @ end
update verification_run set seen = :now, ended = :now where id = :id

-- @ find
insert into verification_finding (run, number, what, place, sentence, leaf, head)
select cast(:run as bigint), f.n + before.number, f.what, f.place, f.sentence, f.leaf,
  (select min(size) from checkpoint where size > f.leaf)
from unnest(cast(:whats as text[]), cast(:places as text[]), cast(:sentences as text[]), cast(:leaves as bigint[]))
  with ordinality as f(what, place, sentence, leaf, n)
cross join (select coalesce(max(number), 0) as number from verification_finding where run = :run) before
where f.n + before.number <= 1000

-- @ findings
select what, place, sentence, leaf, head from verification_finding where run = :run order by number limit 200

-- @ unlike
select row_key, fault from rows_unlike_records(:stream, :table, :key)

-- @ missing numbers
-- gaps, each from its first number to its last
select cast(before as bigint) + 1 as first, cast(serial as bigint) - 1 as last
from (select t.serial, lag(t.serial, 1, c.since) over (order by t.serial) as before
  from ticket t cross join ticket_counter c where t.serial > c.since) n
where serial - 1 > before
union all
select greatest(c.since, m.serial) + 1, c.last
from ticket_counter c cross join (select coalesce(max(cast(serial as bigint)), 0) as serial from ticket) m
where c.last > greatest(c.since, m.serial)
order by 1 limit 200

-- @ not queued
-- a ticket whose entries are more or fewer than its leaves and what waits for sealing
select coalesce(e.stream, l.stream) as stream, coalesce(e.entries, 0) as entries, coalesce(l.last, 0) as sealed
from (select 'ticket/' || ticket_number(ticket) as stream, max(entry) as entries from trail_entry group by ticket) e
full join (
  select stream, max(place) as last
  from (select stream, place from seal_leaf where stream like 'ticket/%'
    union all select stream, place from seal_queue where stream like 'ticket/%') s
  group by stream
) l on l.stream = e.stream
where coalesce(e.entries, 0) <> coalesce(l.last, 0)
  -- of what two people agreed is lost the end may be missing here or there
  and not exists (select from mending m where m.ticket = stream_ticket(coalesce(e.stream, l.stream)) and m.outcome = 'AGREED'
    and m.way = 'GO_ON' and m.last >= greatest(e.entries, l.last) and m.first <= least(e.entries, l.last) + 1)
order by 1 limit 200

-- @ tickets
select serial from ticket where serial > :after order by serial limit :most

-- @ counter
-- the counter stands at the last ticket, since a number that is taken back is given again
select 'ticket_counter' from ticket_counter where last <> coalesce((select max(serial) from ticket), since)

-- @ strays
-- salts that no record names
select d.stream || ' ' || d.place || ' ' || d.name
from disclosure d
left join lateral (select json_read(r.canonical) as j from site_record r where r.stream = d.stream and r.place = d.place) r on true
where length(coalesce(r.j -> 'content' ->> d.name, '')) <> 64 or d.about <> record_about(r.j ->> 'what', r.j -> 'content')
order by 1 limit 200

-- @ ends unlike
-- streams of the site of which the end is not that of their records
select h.stream from stream_head h
left join lateral (select place, hash
  from (select place, hash from site_record r where r.stream = h.stream
    union all select l.place, encode(l.hash, 'hex') from lost_leaf x join seal_leaf l on l.index = x.index where l.stream = h.stream) e
  order by place desc limit 1) r on true
where (h.place, h.hash) is distinct from (coalesce(r.place, 0), coalesce(r.hash, repeat('0', 64)))
union
select distinct r.stream from site_record r where not exists (select from stream_head h where h.stream = r.stream)
union
-- a stream that has no record yet is there by its name
select coalesce(s.name, h.stream)
from unnest(cast(:streams as text[])) s(name)
full join (select stream from stream_head where stream not like 'audit/%') h on h.stream = s.name
where s.name is null or h.stream is null
order by 1 limit 200

-- @ records not sealed
-- records that are neither sealed nor wait for it
select r.stream || ' ' || r.place
from site_record r
where not exists (select from seal_leaf l where l.stream = r.stream and l.place = r.place)
  and not exists (select from seal_queue q where q.stream = r.stream and q.place = r.place)
order by 1 limit 200

-- @ queue unlike
-- what waits to be sealed and is not what is stored
select q.stream || coalesce(' ' || q.place, '')
from seal_queue q
where case
    when q.stream like 'ticket/%' then not exists (select from trail_entry e where e.ticket = stream_ticket(q.stream)
      and q.stream = 'ticket/' || ticket_number(e.ticket) and e.entry = q.place and e.hash = q.hash
      and json_read(e.canonical) ->> 'previous' = q.previous)
      and not exists (select from mending m where m.ticket = stream_ticket(q.stream) and m.outcome = 'AGREED' and m.way = 'GO_ON'
        and q.place between m.first and m.last)
    when q.stream = 'files' then not exists (select from file_record f where f.hash = q.hash)
    else not exists (select from site_record r where r.stream = q.stream and r.place = q.place and r.hash = q.hash
      and json_read(r.canonical) ->> 'previous' = q.previous)
  end
order by 1 limit 200

-- @ files unlike
-- files whose bytes are not those that were sealed, and records whose file is gone
select 'attachment ' || a.sha256 from attachment a
where a.sha256 <> encode(sha256(a.content), 'hex')
  or not exists (select from file_record f where f.hash = encode(sha256(decode('00', 'hex') || file_canonical(a.content)), 'hex'))
union all
select 'file_record ' || f.hash from file_record f
where f.hash <> encode(sha256(decode('00', 'hex') || f.canonical), 'hex')
  or not exists (select from attachment a where a.sha256 = json_read(f.canonical) ->> 'sha256')
  or not exists (select from seal_leaf l where l.stream = 'files' and l.hash = decode(f.hash, 'hex')
    union all select from seal_queue q where q.stream = 'files' and q.hash = f.hash)
order by 1 limit 200

-- @ edge
select h.size, h.frontier, coalesce((select max(index) + 1 from seal_leaf), 0) as leaves,
  (select count(*) from seal_node n where (n.n + 1) * (cast(256 as numeric) ^ n.level) > h.size) as beyond
from seal_head h

-- @ cosignatures
select c.size, c.key, c.at, c.line, p.note from cosignature c join checkpoint p on p.size = c.size
where c.size > :after order by c.size, c.key limit :most

-- @ erased alone
-- requesters whose name and contact are gone without a decision
select 'requester ' || q.id from requester q
where q.erased is not null and not exists (select from site_record r where r.stream = 'erasures'
  and json_read(r.canonical) -> 'content' ->> 'requester' = cast(q.id as text))
order by 1 limit 200

-- @ marks
-- tickets that are marked as broken without an incident, or were found broken and are neither mended nor marked
select 'ticket ' || ticket_number(t.serial)
from ticket t
left join (
  select case j.read ->> 'what' when 'mending' then ticket_number(cast(j.read #>> '{content,ticket}' as integer))
      else substring(j.read #>> '{content,about}' from 8) end as number,
    max(r.place) filter (where j.read ->> 'what' = 'trail-broken') as broken,
    max(r.place) filter (where j.read ->> 'what' = 'mending' and j.read #>> '{content,outcome}' = 'AGREED') as mended
  from site_record r cross join lateral json_read(r.canonical) as j(read)
  where r.stream = 'incidents' and j.read ->> 'what' in ('trail-broken', 'mending')
  group by 1
) i on i.number = ticket_number(t.serial)
where t.broken is distinct from case when i.broken > coalesce(i.mended, 0) then i.broken end
order by 1 limit 200

-- @ seen heads
select p.size, p.signed_at as signed, c.at as seen
from checkpoint p join (select size, min(at) as at from cosignature group by size) c on c.size = p.size
order by p.size

-- @ out of time
-- entries whose time lies outside the span of their leaf
select cast(s.n as integer) as span, l.stream, l.place, e.at
from unnest(cast(:froms as bigint[]), cast(:tos as bigint[]), cast(:notBefores as timestamptz[]), cast(:notAfters as timestamptz[]))
  with ordinality as s(first, beyond, not_before, not_after, n)
join seal_leaf l on l.index >= s.first and l.index < s.beyond and l.stream like 'ticket/%'
join trail_entry e on e.ticket = stream_ticket(l.stream) and e.entry = l.place
where e.at < s.not_before or e.at > s.not_after
order by l.index limit :most

-- @ rules since
-- rules count from the first record that has them after the last one that has others
with settings as (
  select r.place, l.index, coalesce(j.read #>> '{content,rules}', '') = :rules as same
  from site_record r cross join lateral json_read(r.canonical) as j(read)
  left join seal_leaf l on l.stream = r.stream and l.place = r.place
  where r.stream = 'policy' and j.read ->> 'what' = 'settings'
)
select index from (
  select index from settings where same and place > coalesce((select max(place) from settings where not same), 0)
  order by place limit 1) first
where index is not null

-- @ sealed before
select stream, max(place) as place from seal_leaf where stream = any(cast(:streams as text[])) and index < :leaf group by stream

-- @ policies recorded
select distinct j.read #>> '{content,values}' from site_record r cross join lateral json_read(r.canonical) as j(read)
where r.stream = 'policy' and j.read ->> 'what' = 'settings' and j.read #>> '{content,values}' is not null
