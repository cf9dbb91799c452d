-- @ lock
select pg_try_advisory_xact_lock(7202)

-- @ take
delete from seal_queue where id in (select id from seal_queue order by id limit :most)
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
select size, signed_at, note from checkpoint order by size desc limit :most

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

-- @ stored
-- no bytes of what is not there any more
select l.stream, l.place, l.hash, l.leaf_hash, coalesce(
  case
    when l.stream like 'ticket/%' then (select e.canonical from trail_entry e
      where e.ticket = cast(substring(l.stream from '[0-9]+') as integer) and e.entry = l.place)
    when l.stream = 'files' then (select f.canonical from file_record f where f.hash = encode(l.hash, 'hex'))
    else (select r.canonical from site_record r where r.stream = l.stream and r.place = l.place)
  end, '') as canonical
from seal_leaf l
where l.index >= :from and l.index < :to
order by l.index
