-- @ erase
select erase_requester(:requester, :reason, :by, cast(:at as timestamptz))

-- @ kept
-- alike: other numbers under which somebody of that name is kept
select r.name, r.contact, r.erased,
  (select count(*) from ticket t where t.requester = r.id) as tickets,
  (select count(*) from requester o where lower(o.name) = lower(r.name) and o.id <> r.id and o.erased is null) as alike
from requester r
where r.id = :requester

-- @ newest
select serial from ticket where requester = :requester order by serial desc limit :most

-- @ unneeded
select r.id from requester r
where r.erased is null
  and exists (select from ticket t where t.requester = r.id)
  and not exists (select from ticket t where t.requester = r.id and (t.ended is null or t.ended >= cast(:before as timestamptz)))
order by r.id
limit :most
