-- Of two servers that start at once, one loads a scenario.
-- @ remember
insert into scenario (name)
values (:name)
on conflict do nothing
