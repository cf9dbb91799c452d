-- What is wanted about trails that were found broken: lines are added, and end once.

-- @ found broken
select append_site_record('incidents', 'trail-broken', cast(:json as jsonb))

-- @ incident
select convert_from(canonical, 'UTF8') from site_record where stream = 'incidents' and place = :place

-- @ propose
insert into mending (ticket, way, reason, first, last, hash, state, proposed, by, administrators, supervisors, file)
values (:ticket, :way, :reason, :first, :last, :hash, :state, :at, :by, :administrators, :supervisors, cast(:file as bytea))

-- @ open
select id, ticket, way, reason, first, last, hash, state, proposed, by, administrators, supervisors, file, ended, outcome, ended_by
from mending where ticket = :ticket and ended is null
for update

-- @ of ticket
select id, ticket, way, reason, first, last, hash, state, proposed, by, administrators, supervisors, cast(null as bytea) as file,
  ended, outcome, ended_by
from mending where ticket = :ticket order by id desc

-- @ end
update mending set ended = :at, outcome = :outcome, ended_by = :by, file = null where id = :id
