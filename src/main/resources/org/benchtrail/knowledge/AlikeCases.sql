-- @ newest
select serial, known, findings
from closed_case
where not reopened {and}
order by closed desc, serial desc
limit :most

-- @ of the kind
category = :category

-- @ of the device
select c.serial, c.known
from ticket t join closed_case c on c.serial = t.serial
where t.device = :device and t.place = :place and t.serial <> :but and not c.reopened and c.known is not null
order by c.closed desc, c.serial desc
limit :most
