-- @ lock
select pg_try_advisory_xact_lock(7202)

-- @ queued
select id from seal_queue where stream = :stream and place = :place

-- @ take
delete from seal_queue where id in (select id from seal_queue where id <= :last order by id limit :most)
returning id, at, stream, place, previous, hash

-- @ ends
select s.stream, l.place, encode(l.hash, 'hex') as hash
from unnest(cast(:streams as text[])) as s(stream)
cross join lateral (select place, hash from seal_leaf where stream = s.stream order by place desc limit 1) l

-- @ head
select size, frontier from seal_head

-- @ add leaves
insert into seal_leaf (index, stream, place, hash, leaf_hash)
select cast(:first as bigint) + n - 1, stream, place, decode(hash, 'hex'), decode(leaf_hash, 'hex')
from unnest(cast(:streams as text[]), cast(:places as bigint[]), cast(:hashes as text[]), cast(:leafHashes as text[]))
  with ordinality as t(stream, place, hash, leaf_hash, n)

-- @ add nodes
insert into seal_node (level, n, hash)
select level, n, decode(hash, 'hex')
from unnest(cast(:levels as integer[]), cast(:numbers as bigint[]), cast(:hashes as text[])) as t(level, n, hash)

-- @ grow
update seal_head set size = :size, frontier = :frontier

-- @ set aside
insert into seal_stuck (id, at, stream, place, previous, hash)
values (:id, :at, :stream, cast(:place as bigint), cast(:previous as text), :hash)

-- @ hashes
select leaf_hash from seal_leaf where index >= :from and index < :to order by index

-- @ nodes
select hash from seal_node where level = :level and n >= :from and n < :to order by n

-- @ leaves
select stream, place, hash from seal_leaf where index >= :from and index < :to order by index

-- @ places
select place, index from seal_leaf where stream = :stream order by place

-- @ newest
select size, signed_at, note from checkpoint order by size desc limit 1

-- @ heads
select size, signed_at, note from checkpoint where size <= :largest order by size desc limit :most

-- @ first signed
select signed_at from checkpoint order by size limit 1

-- @ publish
insert into checkpoint (size, signed_at, note) values (:size, :at, :note)

-- @ cosignatures
select line from cosignature where size = :size order by at, key

-- @ record
select append_site_record(:stream, :what, cast(:json as jsonb))

-- @ records
select place, canonical, hash from site_record where stream = :stream and place > :after order by place limit :most

-- @ newest records
select place, canonical, hash from site_record where stream = :stream order by place desc limit :most

-- @ waiting
select count(*) as count, min(at) as oldest, (select count(*) from seal_stuck) as stuck from seal_queue

-- @ heads between
select size, signed_at, note from checkpoint where size > :from and size <= :to order by size

-- @ nodes between
-- by where their tile ends
select level, n, hash from generate_series(1, 7) as at(level)
join lateral (select n, hash from seal_node s where s.level = at.level
  and n >= cast(:from as bigint) >> 8 * at.level and n < cast(:to as bigint) >> 8 * at.level) s on true
order by level, n

-- @ behind
update seal_head set behind = cast(:why as text) where behind is distinct from cast(:why as text)

-- @ put back streams
-- a stream of the site goes on after what was lost
insert into stream_head (stream, place, hash)
select distinct on (stream) stream, place, encode(hash, 'hex') from seal_leaf
where index >= :from and stream not like 'ticket/%' and stream <> 'files'
order by stream, place desc
on conflict (stream) do update set place = excluded.place, hash = excluded.hash where stream_head.place < excluded.place

-- @ put back numbers
update ticket_counter set last = greatest(last,
  (select coalesce(max(stream_ticket(stream)), 0) from seal_leaf where index >= :from and stream like 'ticket/%'))

-- @ queued already
-- what waited when the backup was made, and was sealed afterwards
delete from seal_queue q using seal_leaf l
where l.index >= :from and l.stream = q.stream and l.hash = decode(q.hash, 'hex') and (l.place = q.place or q.place is null)

-- @ lost
insert into lost_leaf (index)
select l.index from seal_leaf l
where l.index >= :from and case
    when l.stream like 'ticket/%' then not exists (select from trail_entry e
      where e.ticket = stream_ticket(l.stream) and e.entry = l.place and e.hash = encode(l.hash, 'hex'))
    when l.stream = 'files' then not exists (select from file_record f where f.hash = encode(l.hash, 'hex'))
    else not exists (select from site_record r where r.stream = l.stream and r.place = l.place and r.hash = encode(l.hash, 'hex'))
  end

-- @ which are lost
select index from lost_leaf where index >= :from and index < :to

-- @ holes
select 'ticket/' || ticket_number(m.ticket) as stream, m.first, m.last, m.hash, max(r.place) as incident
from mending m
join site_record r on r.stream = 'incidents'
cross join lateral json_read(r.canonical) as j(read)
where m.outcome = 'AGREED' and m.way = 'GO_ON' and j.read ->> 'what' = 'mending' and (j.read -> 'content') @> jsonb_build_object(
  'id', m.id, 'ticket', m.ticket, 'first', m.first, 'last', m.last, 'hash', m.hash, 'way', 'GO_ON', 'outcome', 'AGREED')
group by m.id
order by m.ticket, m.first

-- @ broken
select serial from ticket where broken is not null order by serial desc limit :most
