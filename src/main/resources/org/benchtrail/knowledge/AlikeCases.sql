-- @ newest
select serial, known, findings
from closed_case
where not reopened {and}
order by closed desc, serial desc
limit :most

-- @ of the kind
category = :category
