-- What is one person's own (what they forecast, answered, chose to be shown) and practice jobs are read and written with an account of
-- its own each, which a transaction takes on for that and lays down again. The server's ordinary account, with which all else is read
-- and written, sees none of it; and neither of the two sees anything else. The accounts are made by whoever administers the database,
-- because who owns the schema may not.

do $$
declare
  missing text[] := (
    select array_agg(account order by account) from unnest(array['${serverRole}_private', '${serverRole}_practice']) as account
    where not exists (select from pg_roles r where r.rolname = account
      and pg_has_role('${serverRole}', r.oid, 'member') and not pg_has_role('${serverRole}', r.oid, 'usage')));
  names text := (select string_agg(quote_ident(account), ', ') from unnest(missing) as account);
begin
  if missing is not null then
    raise exception using errcode = 'BT002', message = format('The database lacks what the server''s account takes on for a moment'
      ' and has no right of otherwise: %1$s. Let the superuser of the database run this, then migrate again:'
      ' %2$s alter role %3$I noinherit; revoke %1$s from %3$I; grant %1$s to %3$I; Leave out "create role" of one that is there'
      ' already. The file own-accounts.sql beside roles.sql does the same.', names,
      (select string_agg(format('create role %I nologin;', account), ' ') from unnest(missing) as account), '${serverRole}');
  end if;
end $$;

-- A server of an earlier release reads and writes all with the one account, and says nothing here.
alter table server_node add column apart boolean not null default false;

create function require_older_server() returns boolean language plpgsql stable as $$
begin
  -- one that was killed counts for an hour
  if not exists (select from server_node where not apart and ended is null and seen > now() - interval '1 hour') then
    raise exception 'permission denied: it is read and written with an account of its own' using errcode = 'insufficient_privilege';
  end if;
  return true;
end $$;

-- the same for the schemas apart, which stay where they are when the schema of all else goes
create function forecast.require_older_server() returns boolean language plpgsql stable as $$
begin
  return require_older_server();
end $$;

grant usage on schema forecast, recall, coach to ${serverRole}_private;
grant select, insert, delete on forecast.content, forecast.seen, recall.answer to ${serverRole}_private;
grant select, insert on forecast.reading, forecast.skipped, recall.day, coach.choice to ${serverRole}_private;

grant select, insert on practice_job, practice_truth, practice_entry, practice_act, practice_own, practice_own_text,
  practice_own_check, practice_own_given, coach_trial_seed to ${serverRole}_practice;
grant update (state, ended) on practice_job to ${serverRole}_practice;
grant update (withdrawn) on practice_own to ${serverRole}_practice;
grant update (job) on practice_own_given to ${serverRole}_practice;
grant update (checked, clean, result) on practice_own_check to ${serverRole}_practice;
-- which job of a test of the coach it is, and whether that test has come to its end
grant select on coach_trial, coach_trial_turn, coach_trial_job, coach_trial_result to ${serverRole}_practice;

-- The ordinary account keeps its grants for servers of the release before, behind policies that let nobody else use them. A later
-- migration takes both away.
do $$
declare
  one record;
  name text;
begin
  for one in select * from (values ('forecast', 'content'), ('forecast', 'seen'), ('forecast', 'reading'), ('forecast', 'skipped'),
      ('recall', 'answer'), ('recall', 'day'), ('coach', 'choice')) as t(place, name) loop
    execute format('alter policy own on %I.%I to ${serverRole}_private', one.place, one.name);
    execute format('create policy older on %I.%I to ${serverRole} using (case when (select forecast.require_older_server())'
      ' then person = current_setting(%L, true) end)', one.place, one.name, one.place || '.person');
  end loop;
  foreach name in array array['practice_job', 'practice_truth', 'practice_entry', 'practice_act', 'practice_own', 'practice_own_text',
      'practice_own_check', 'practice_own_given', 'coach_trial_seed'] loop
    execute format('alter table %I enable row level security', name);
    execute format('create policy apart on %I to ${serverRole}_practice using (true)', name);
    execute format('create policy older on %I to ${serverRole} using ((select require_older_server()))', name);
  end loop;
end $$;
