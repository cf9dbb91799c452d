-- @ keep
insert into time_stamp (size, at, by, hash, answer) values (:size, :at, :by, :hash, :answer) on conflict do nothing

-- @ newest
select t.size, t.at, t.by, t.hash, t.answer, p.note from time_stamp t join checkpoint p on p.size = t.size
where t.size <= :largest order by t.size desc limit 1

-- @ all
select t.size, t.at, t.by, t.hash, t.answer, p.note from time_stamp t join checkpoint p on p.size = t.size
where t.size > :after order by t.size limit :most
