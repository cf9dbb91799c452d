-- @ remember
insert into scenario (name) values (:name) on conflict do nothing
