-- @ standing
select (select min(at) from seal_queue) as oldest, (select count(*) from seal_stuck) as stuck,
  i.place as incident, i.sentence, i.at, (select signed_at from checkpoint order by size desc limit 1) as signed,
  (select count(*) from verification_finding f where f.run = (select max(id) from verification_run)) as findings
from (select true) one
left join lateral (
  select r.place, j.read #>> '{content,sentence}' as sentence, j.read #>> '{content,at}' as at
  from site_record r cross join lateral json_read(r.canonical) as j(read)
  where r.stream = 'incidents' and j.read ->> 'what' = 'not-signed'
  order by r.place desc limit 1
) i on true

-- @ unsigned by witnesses
select k.key, h.size, h.signed_at as at,
  exists (select from cosignature c where c.key = k.key and c.size >= h.size) as signed
from (select size, signed_at from checkpoint where signed_at <= :before order by signed_at desc limit 1) h
cross join unnest(cast(:keys as text[])) k(key)
