-- @ keep
insert into cosignature (size, key, at, line) values (:size, :key, :at, :line) on conflict do nothing

-- @ note
insert into witness_event (at, witness, size, status, detail) values (:at, :witness, :size, :status, :detail)

-- @ last
select coalesce(max(size), 0) from cosignature where key = :key

-- @ first signed
select at from cosignature order by at limit 1

-- @ newest
select distinct on (witness) at, witness, size, status, detail from witness_event order by witness, id desc
