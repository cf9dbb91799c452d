-- @ newest
select c.serial, c.known, c.cause_id, c.findings, coalesce(t.place, '') as place
from (select serial, known, cause_id, findings, closed
  from closed_case
  where not reopened {and}
  order by closed desc, serial desc
  limit :most) c left join ticket t on t.serial = c.serial
order by c.closed desc, c.serial desc

-- @ of the kind
category = :category

-- @ of the device
select c.serial, c.known
from ticket t join closed_case c on c.serial = t.serial
where t.device = :device and t.place = :place and t.serial <> :but and not c.reopened and c.known is not null
order by c.closed desc, c.serial desc
limit :most
