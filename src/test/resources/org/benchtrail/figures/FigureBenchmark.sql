-- Invented tickets with their moves, in a schema of their own. A ticket takes some hours for each step; some go back once, some are
-- on hold, and the latest are not closed yet.

-- @ none
drop schema if exists many_moves cascade

-- @ schema
create schema many_moves
  create table ticket (like public.ticket including defaults including generated)
  create table trail_entry (like public.trail_entry including defaults)

-- @ tickets
insert into many_moves.ticket (serial, title, category, device, place, requester, impact, urgency, priority, step, standing, round,
  assignee, opened, due, escalated, entries, touched, ended, words, last_hash)
select i, 'Invented ' || i, (array['POWER', 'HEAT', 'STORAGE', 'WIRED', 'OTHER'])[1 + i % 5], 'device ' || i % 20000,
  'room ' || i % 500, 1, 'ONE_PERSON', 'CAN_WAIT', 'THIS_WEEK', 'DOCUMENT', case when closed < now() then 'CLOSED' else 'OPEN' end, 1,
  'person' || i % 40, opened, opened + interval '60 hours', false, 30, opened, case when closed < now() then closed end, '', ''
from (
  select i, now() - (({rows} - i) * interval '5 minutes') as opened,
    now() - (({rows} - i) * interval '5 minutes') + 6 * (1 + abs(hashint4(i) % 1000) / 100.0) * interval '1 hour'
      * (1 + abs(hashint4(i + 7) % 3)) as closed
  from generate_series(1, {rows}) i) t

-- @ entries
insert into many_moves.trail_entry (ticket, entry, at, actor, kind, canonical, hash)
select t.serial, e.n, t.opened + (e.n / 30.0) * (coalesce(t.ended, now()) - t.opened), t.assignee,
  case when e.n = 1 then 'opened' when e.n = 30 and t.ended is not null then 'closed'
    when e.n in (5, 10, 15, 20, 25) then 'advanced' else 'reading-recorded' end,
  convert_to(repeat('x', 400), 'UTF8'), ''
from many_moves.ticket t, generate_series(1, 30) e(n)

-- @ indexes
do $$ begin
  execute 'alter table many_moves.ticket add primary key (serial)';
  execute 'alter table many_moves.trail_entry add primary key (ticket, entry)';
  execute 'create index ticket_at_step on many_moves.ticket (standing, step, due, serial);
create index ticket_by_opened on many_moves.ticket (opened)';
  execute 'create index trail_entry_ended on many_moves.trail_entry (at) where kind in (''closed'', ''cancelled'')';
  execute 'create index trail_entry_moves on many_moves.trail_entry (ticket, entry) include (kind, at) where kind in (''advanced'', ''ruled-out'', ''rethought'', ''verify-failed'', ''closed'', ''cancelled'', ''reopened'', ''held'', ''resumed'')';
end $$

-- @ rights
do $$ begin
  execute 'grant usage on schema many_moves to benchtrail_server';
  execute 'grant select on all tables in schema many_moves to benchtrail_server';
end $$

-- @ seen
vacuum analyze many_moves.trail_entry

-- @ counted
vacuum analyze many_moves.ticket
