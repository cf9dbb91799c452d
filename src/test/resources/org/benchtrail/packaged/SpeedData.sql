-- Takes the invented tickets of TicketPlansTest.sql into the tables that the server reads. Indexes are quicker made at the end.

-- @ indexes away
do $$
declare one record;
begin
  create temporary table index_away as
    select format('%I.%I', schemaname, indexname) as name, indexdef as definition from pg_indexes
    where schemaname = 'public' and tablename in ('ticket', 'closed_case', 'requester')
      and not exists (select from pg_constraint where conname = indexname)
      and indexdef not like 'CREATE UNIQUE%';
  for one in select name from index_away loop
    execute 'drop index ' || one.name;
  end loop;
end $$

-- @ triggers away
do $$
begin
  alter table ticket disable trigger user;
  alter table requester disable trigger user;
end $$

-- @ requesters
insert into requester (id, name, contact, erased) overriding system value select id, name, contact, erased from many.requester
on conflict do nothing

-- @ words
insert into ticket_word select word from many.ticket_word on conflict do nothing

-- @ devices
insert into ticket_device select label from many.ticket_device on conflict do nothing

-- @ tickets
insert into ticket
  (serial, title, category, device, place, requester, impact, urgency, priority, step, standing, round, assignee, opened, due,
    hold_for, follow_up, escalated, entries, last_hash, touched, ended, words)
select serial, title, category, device, place, requester, impact, urgency, priority, step, standing, round, assignee, opened, due,
  hold_for, follow_up, escalated, entries, last_hash, touched, ended, words
from many.ticket
on conflict do nothing

-- @ cases
insert into closed_case
  (serial, title, device, category, cause, sureness, body, findings, closed, closed_by, minutes, search)
select serial, words, device, category, 'A worn part', 'MEASURED', words, array['fan-turns=' || case serial % 2 when 0 then 'yes' else 'no' end],
  touched, 'ines', 45, search
from ticket where standing = 'CLOSED' and serial between {from} and {rows}
on conflict do nothing

-- @ words of cases
insert into knowledge_word select word from many.ticket_word on conflict do nothing

-- @ requesters go on
select setval(pg_get_serial_sequence('requester', 'id'), greatest((select max(id) from requester), 1))

-- @ numbers go on
update ticket_counter set last = greatest(last, {rows})

-- @ triggers back
do $$
begin
  alter table ticket enable trigger user;
  alter table requester enable trigger user;
end $$

-- @ indexes back
do $$
declare one record;
begin
  set local maintenance_work_mem = '256MB';
  for one in select definition from index_away loop
    execute one.definition;
  end loop;
  drop table index_away;
end $$

-- @ statistics
vacuum (analyze) ticket, closed_case, requester, ticket_word, ticket_device, knowledge_word
