-- @ supporting cases
select serial, title, device, closed, closed_by
from closed_case
where known = :cause and not reopened
order by closed desc, serial desc
limit :most

-- @ own findings
select findings
from closed_case
where known = :cause and not reopened
order by closed desc
limit :most

-- what the newest cases of the kind found that are not its own
-- @ other findings
select findings
from (
  select findings, known from closed_case
  where category = :category and not reopened
  order by closed desc, serial desc
  limit :newest
) newest
where known is distinct from :cause

-- @ count cases
select count(*)
from (select from closed_case where not reopened limit :most) c
