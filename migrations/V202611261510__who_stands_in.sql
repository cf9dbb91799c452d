-- For whom a person stands in at a moment: whoever is away and has that person as delegate, or as delegate's delegate if that one is
-- away as well. Nobody stands in who is away.
create function stands_in_for(person text, moment timestamptz) returns setof text
language sql stable
as $$
  with recursive away as (
    select account, delegate from absence where withdrawn is null and begins <= moment and moment < ends
  ), line (account) as (
    select a.account from away a where a.delegate = person
    union
    select a.account from away a join line l on a.delegate = l.account
  )
  select account from line where not exists (select from away where away.account = person)
$$;
