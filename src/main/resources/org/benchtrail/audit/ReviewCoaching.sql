-- What people have read of the reviews of their own work, and who looked at what they had read.

-- @ note
insert into coaching_read (person, lot, place, at) values (:person, :lot, :place, :at)
on conflict (person, lot) do update set place = excluded.place, at = excluded.at where coaching_read.place < excluded.place

-- @ read
select lot, place from coaching_read where person = :person order by lot desc

-- @ readers
select distinct person from coaching_read

-- @ look
insert into coaching_look (person, reader, at) values (:person, :reader, :at)

-- @ looks
select reader, at from coaching_look where person = :person order by id desc limit :most
