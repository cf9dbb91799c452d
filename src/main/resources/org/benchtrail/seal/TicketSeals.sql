-- @ sealed
-- the last entry of a ticket below the newest head, and which witnesses have signed a head that holds it: those that are asked, and
-- those that signed the first such head, should the site ask them no more
with last as (
  select place, index from seal_leaf
  where stream = :stream and index < coalesce((select max(size) from checkpoint), 0)
  order by place desc limit 1
), asked as (
  select key from unnest(cast(:keys as text[])) k(key)
  union
  select c.key from last l join cosignature c on c.size = (select min(size) from cosignature where size > l.index)
)
select l.place, count(a.key) as asked, count(s.at) as signed, max(s.at) as at
from last l
left join asked a on true
left join lateral (select c.at from cosignature c where c.key = a.key and c.size > l.index order by c.size limit 1) s on true
group by l.place
