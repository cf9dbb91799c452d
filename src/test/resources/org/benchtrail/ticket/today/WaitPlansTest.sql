-- 200,000 waits in a schema of their own, with the columns and indexes of the real table: of each hundred, one is any
-- supervisor's, one any mentor's, the others one person's.

-- @ none
drop schema if exists manywaits cascade

-- @ schema
create schema manywaits

-- @ table
create unlogged table manywaits.ticket_wait (like public.ticket_wait including all)

-- @ waits
insert into manywaits.ticket_wait (ticket, kind, entry, account, supervisors, mentors, hands, asker, since, due)
select n, 'FOLLOW_UP', 9, case when n % 100 > 1 then 'person' || n % 2000 end, n % 100 = 0, n % 100 = 1,
  array['person' || n % 2000], 'person' || n % 1999,
  timestamptz '2020-01-01 00:00+00' + n * interval '3 minutes', timestamptz '2020-01-01 00:00+00' + n * interval '3 minutes'
from generate_series(1, 200000) n

-- @ right to read
grant usage on schema manywaits to benchtrail_server; grant select on manywaits.ticket_wait to benchtrail_server

-- @ statistics
analyze manywaits.ticket_wait
