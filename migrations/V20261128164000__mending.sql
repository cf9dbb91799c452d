-- What is done about a ticket whose trail was found broken: its row is marked, and two people mend it.

-- Place in 'incidents' of what was found; as long as it stands nothing is recorded on the ticket, whatever else was put right.
alter table ticket add column broken bigint;
create index ticket_broken on ticket (serial) where broken is not null;

create table mending (
  id             bigint generated always as identity primary key,
  ticket         integer     not null references ticket,
  way            text        not null check (way in ('PUT_BACK', 'GO_ON')),
  reason         text        not null,
  -- the first entry that does not hold, where the trail has to end, and the hash of its last entry there
  first          integer     not null check (first >= 1),
  last           integer     not null check (last >= first - 1),
  hash           text        not null check (hash ~ '^[0-9a-f]{64}$'),
  -- fingerprint of all that was stored of the ticket
  state          text        not null,
  proposed       timestamptz not null,
  by             text        not null,
  administrators text        not null,
  supervisors    text        not null,
  -- what was given to be put back; its bytes prove themselves, and it goes when the proposal ends
  file           bytea,
  ended          timestamptz,
  outcome        text check (outcome in ('AGREED', 'WITHDRAWN', 'LAPSED')),
  ended_by       text,
  check ((ended is null) = (outcome is null) and (ended is null) = (ended_by is null)),
  check (outcome is distinct from 'AGREED' or ended_by <> by),
  check (ended is null or file is null)
);
create unique index mending_open on mending (ticket) where ended is null;
create index mending_hole on mending (ticket, id) where outcome = 'AGREED' and way = 'GO_ON';

create function refuse_other_mending() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE' or old.ended is not null
      or (to_jsonb(old) - '{file,ended,outcome,ended_by}'::text[]) <> (to_jsonb(new) - '{file,ended,outcome,ended_by}'::text[]) then
    raise exception 'what was proposed stays as it is: % on % refused', tg_op, tg_table_name using errcode = 'insufficient_privilege';
  end if;
  return new;
end $$;
create trigger mending_stays before update or delete on mending for each row execute function refuse_other_mending();
create trigger mending_is_not_emptied before truncate on mending for each statement execute function refuse_change();
create constraint trigger mending_is_sealed after insert or update on mending deferrable initially deferred for each row
  execute function seal_named_columns('incidents',
    'id ticket way reason first last hash state proposed by administrators supervisors ended outcome ended_by', 'reason');
grant select, insert on mending to ${serverRole};
grant update (file, ended, outcome, ended_by) on mending to ${serverRole};

create function entry_hash(canonical bytea) returns text language sql immutable strict parallel safe as $$
  select encode(sha256('\x00'::bytea || canonical), 'hex')
$$;

-- Whether that is the hash that the entry at this place has to have: by its leaf; without one by the entry after it, or by the row.
create function is_proven(of_ticket integer, place integer, hashed text) returns boolean language plpgsql stable as $$
declare
  sealed bytea := (select l.hash from seal_leaf l where l.stream = 'ticket/' || ticket_number(of_ticket) and l.place = is_proven.place);
begin
  if sealed is not null then
    return sealed = decode(hashed, 'hex');
  end if;
  return exists (select from trail_entry e where e.ticket = of_ticket and e.entry = is_proven.place + 1
      and e.hash = entry_hash(e.canonical) and json_read(e.canonical) ->> 'previous' = hashed)
    or exists (select from ticket t where t.serial = of_ticket and t.entries = is_proven.place and t.last_hash = hashed);
end $$;

-- The trail takes the next entry: after its last one, or after a hole that two people agreed to go on after. Below its end it takes
-- back what is proven to have stood there, and nothing else.
create or replace function require_next_entry() returns trigger language plpgsql as $$
declare
  last record;
  hole record;
begin
  select entry, hash into last from trail_entry where ticket = new.ticket order by entry desc limit 1;
  select m.last as entry, m.hash into hole from mending m
    where m.ticket = new.ticket and m.outcome = 'AGREED' and m.way = 'GO_ON' order by m.id desc limit 1;
  if hole.entry >= coalesce(last.entry, 0) then
    last := hole;
  end if;
  if new.entry = coalesce(last.entry, 0) + 1
      and convert_from(new.canonical, 'UTF8')::json ->> 'previous' = coalesce(last.hash, repeat('0', 64)) then
    return new;
  end if;
  if new.hash = entry_hash(new.canonical) and is_proven(new.ticket, new.entry, new.hash) then
    return new;
  end if;
  if new.entry <> coalesce(last.entry, 0) + 1 then
    raise exception 'the trail goes on at entry %, not at %', coalesce(last.entry, 0) + 1, new.entry
      using errcode = 'integrity_constraint_violation';
  end if;
  raise exception 'entry % does not name the hash of the entry before it', new.entry
    using errcode = 'integrity_constraint_violation';
end $$;

-- An entry that was altered takes its own bytes back, with the columns that they say, and no others, whoever asks.
create function refuse_other_entry() returns trigger language plpgsql as $$
declare
  told jsonb := json_read(new.canonical);
begin
  if tg_op = 'UPDATE' and new.ticket = old.ticket and new.entry = old.entry and new.hash = entry_hash(new.canonical)
      and new.at = (told ->> 'at')::timestamptz and new.actor = told ->> 'actor' and new.kind = told #>> '{payload,kind}'
      and is_proven(new.ticket, new.entry, new.hash) then
    return new;
  end if;
  raise exception 'this table is append-only: % on % refused', tg_op, tg_table_name using errcode = 'insufficient_privilege';
end $$;
drop trigger trail_entry_stays on trail_entry;
create trigger trail_entry_stays before update or delete on trail_entry for each row execute function refuse_other_entry();

-- The server's account may not change an entry; this function may, as far as the trigger lets it, once two people agreed.
create function put_back_entry(of_ticket integer, place integer, bytes bytea) returns void
language plpgsql security definer set search_path to public, pg_temp as $$
declare
  told jsonb := json_read(bytes);
begin
  if not exists (select from mending m where m.ticket = of_ticket and m.way = 'PUT_BACK' and m.outcome = 'AGREED') then
    raise exception 'nobody agreed to put entries of ticket % back', of_ticket using errcode = 'insufficient_privilege';
  end if;
  insert into trail_entry as e (ticket, entry, at, actor, kind, canonical, hash)
  values (of_ticket, place, (told ->> 'at')::timestamptz, told ->> 'actor', told #>> '{payload,kind}', bytes, entry_hash(bytes))
  on conflict (ticket, entry) do update
    set at = excluded.at, actor = excluded.actor, kind = excluded.kind, canonical = excluded.canonical, hash = excluded.hash;
end $$;
revoke execute on function put_back_entry(integer, integer, bytea) from public;
grant execute on function put_back_entry(integer, integer, bytea) to ${serverRole};
