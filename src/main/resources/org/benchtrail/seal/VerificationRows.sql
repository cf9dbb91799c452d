-- @ end forgotten
update verification_run set ended = :now, stopped = true where ended is null and seen < :before

-- @ begin
insert into verification_run (started, seen, by, size) values (:now, :now, :by, :size)
on conflict do nothing

-- @ newest
select id, started, ended, by, size, done, stopped from verification_run order by id desc limit 1

-- @ go on
update verification_run set seen = :now, done = :done where id = :id and not stopped

-- @ stop
update verification_run set stopped = true where ended is null

-- @ end
update verification_run set seen = :now, ended = :now where id = :id

-- @ find
insert into verification_finding (run, number, what, place, sentence)
select :run, coalesce(max(number), 0) + 1, :what, :place, :sentence from verification_finding where run = :run
having coalesce(max(number), 0) < 1000

-- @ findings
select what, place, sentence from verification_finding where run = :run order by number limit 200

-- @ disabled
-- a trigger of the log that is gone or does not work
select t.name from unnest(cast(:names as text[])) as t(name)
where not exists (select from pg_trigger g where g.tgname = t.name and g.tgenabled in ('O', 'A'))
order by 1

-- @ unlike
select row_key, fault from rows_unlike_records(:stream, :table, :key)

-- @ missing numbers
select n from ticket_counter c cross join generate_series(c.since + 1, c.last) as n
where not exists (select from ticket t where t.serial = n)
order by 1 limit 20

-- @ not queued
-- a ticket whose entries are more or fewer than its leaves and what waits for sealing
select coalesce(e.stream, l.stream) as stream, coalesce(e.entries, 0) as entries, coalesce(l.last, 0) as sealed
from (select 'ticket/' || ticket_number(ticket) as stream, max(entry) as entries from trail_entry group by ticket) e
full join (
  select stream, max(place) as last
  from (select stream, place from seal_leaf where stream like 'ticket/%'
    union all select stream, place from seal_queue where stream like 'ticket/%') s
  group by stream
) l on l.stream = e.stream
where coalesce(e.entries, 0) <> coalesce(l.last, 0)
order by 1 limit 20

-- @ tickets
select serial from ticket where serial > :after order by serial limit :most
