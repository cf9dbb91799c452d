-- @ leaves
select index, stream, place, hash, leaf_hash from seal_leaf where index >= :from and index < :to order by index

-- @ entries
-- of tickets
select cast(r.n as integer) as run, e.entry as place, e.hash, e.canonical
from unnest(cast(:streams as text[]), cast(:firsts as bigint[]), cast(:lasts as bigint[])) with ordinality as r(stream, first, last, n)
cross join lateral (select entry, hash, canonical from trail_entry
  where ticket = stream_ticket(r.stream) and entry >= r.first and entry <= r.last) e

-- @ records
-- of streams of the site
select cast(r.n as integer) as run, s.place, s.hash, s.canonical
from unnest(cast(:streams as text[]), cast(:firsts as bigint[]), cast(:lasts as bigint[])) with ordinality as r(stream, first, last, n)
cross join lateral (select place, hash, canonical from site_record
  where stream = r.stream and place >= r.first and place <= r.last) s

-- @ files
select hash, canonical from file_record where hash = any(cast(:hashes as text[]))
