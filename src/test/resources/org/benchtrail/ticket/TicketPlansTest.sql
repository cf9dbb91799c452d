-- {rows} tickets, numbered from {from} on, in a schema of their own, with the columns and indexes of the real table. Those after {closed} are open.
-- Kind, priority, step and words do not hang on each other.
-- Words: everybody's (in a third of all), usual ones (in one of a hundred), and such as fifty tickets share.

-- @ schema
create schema many

-- @ reading
grant usage on schema many to benchtrail_server

-- @ table
create unlogged table many.ticket (like public.ticket including defaults)

-- @ texts
create unlogged table many.text as
select k, words, to_tsvector('simple', words) as search
from (
  select k, concat_ws(' ', 'common' || k % 3, 'common' || 3 + k / 12 % 4, 'usual' || k % 100, 'usual' || 100 + k / 3 % 100,
    'usual' || 200 + k / 7 % 100, 'seldom' || k % 20000, 'seldom' || 20000 + k / 2) as words
  from generate_series(0, 19999) k
) made

-- @ tickets
insert into many.ticket
  (serial, title, category, device, place, requester, impact, urgency, priority, step, standing, round, assignee, opened, due,
    hold_for, follow_up, escalated, entries, last_hash, touched, ended, words, search, priority_rank)
select n, 'Does not start', (array['HEAT', 'STORAGE', 'WIRED', 'OTHER'])[1 + n / 5 % 4], 'device ' || n % 20000,
  'room ' || n % 500, n, 'ONE_PERSON', 'HINDERED',
  (array['AT_ONCE', 'SAME_DAY', 'THIS_WEEK', 'WHEN_PLANNED'])[1 + n % 4],
  case when n <= {closed} then 'DOCUMENT' else (array['IDENTIFY', 'THEORIZE', 'TEST', 'PLAN', 'VERIFY', 'DOCUMENT'])[1 + n / 20 % 6] end,
  case when n % 50 = 0 then 'CANCELLED' when n <= {closed} then 'CLOSED' else 'OPEN' end,
  1, case when n > {closed} and n % 10 = 0 then null else 'person' || n % 40 end,
  timestamptz '2020-01-01 00:00+00' + n * interval '3 minutes', timestamptz '2020-01-04 00:00+00' + n * interval '3 minutes',
  case when n > {closed} and n % 20 = 1 then 'a part' end,
  case when n > {closed} and n % 20 = 1 then timestamptz '2030-01-01 00:00+00' end,
  false, 30, repeat('0', 64), timestamptz '2020-01-02 00:00+00' + n * interval '3 minutes', null, words, search, n % 4
from generate_series({from}, {rows}) n
join many.text on k = n % 20000

-- @ words
create unlogged table many.ticket_word as select distinct unnest(tsvector_to_array(search)) as word from many.text

-- @ devices
create unlogged table many.ticket_device as select 'device ' || n as label from generate_series(0, 19999) n

-- @ requesters
create unlogged table many.requester as
select cast(n as bigint) as id, 'Name' || n % 9000 || ' Family' || n % 7000 as name, 'room 4' as contact, cast(null as timestamptz) as erased
from generate_series({from}, {rows}) n

-- @ waits
create unlogged table many.ticket_wait as
select cast(n as bigint) as id, {closed} + n % ({rows} - {closed}) as ticket,
  case when n % 400 = 0 then 'OFFER' else 'HELD' end as kind, 2 as entry, 'person' || n % 40 as account, n % 400 = 1 as supervisors,
  n % 400 = 2 as mentors, cast(array[] as text[]) as hands, 'person1' as asker, now() as since, now() as due
from generate_series(1, 40000) n

-- @ right to read
grant select on all tables in schema many to benchtrail_server

-- @ indexes
do $$
declare definition text;
begin
  set local maintenance_work_mem = '256MB';
  for definition in select indexdef from pg_indexes where schemaname = 'public'
      and tablename in ('ticket', 'ticket_word', 'ticket_device', 'ticket_wait', 'requester') loop
    execute replace(definition, ' ON public.', ' ON many.');
  end loop;
end $$

-- @ statistics
vacuum (analyze) many.ticket, many.ticket_word, many.ticket_device, many.ticket_wait, many.requester

-- @ none
drop schema if exists many cascade
