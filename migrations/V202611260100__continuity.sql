-- What holds a ticket's record together: its row names the end of its trail, the trail takes no entry but the next one, the
-- bytes of files stay, and what was found not to hold is kept.

-- The hash of the last entry stands in the row as well, so that a tail that was cut or written anew is seen at the next act.
-- The number of entries is left as it is: what was cut before today does not become whole by this.
alter table ticket add column last_hash text;
update ticket set last_hash = coalesce(
  (select hash from trail_entry where ticket = serial order by entry desc limit 1), repeat('0', 64));
alter table ticket alter column last_hash set not null;

create function require_next_entry() returns trigger language plpgsql as $$
declare
  last record;
begin
  select entry, hash into last from trail_entry where ticket = new.ticket order by entry desc limit 1;
  if new.entry <> coalesce(last.entry, 0) + 1 then
    raise exception 'the trail goes on at entry %, not at %', coalesce(last.entry, 0) + 1, new.entry
      using errcode = 'integrity_constraint_violation';
  end if;
  if convert_from(new.canonical, 'UTF8')::json ->> 'previous' is distinct from coalesce(last.hash, repeat('0', 64)) then
    raise exception 'entry % does not name the hash of the entry before it', new.entry
      using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger trail_entry_follows before insert on trail_entry for each row execute function require_next_entry();

create or replace function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception 'this table is append-only: % on % refused', tg_op, tg_table_name using errcode = 'insufficient_privilege';
end $$;

create trigger attachment_stays before update or delete on attachment for each row execute function refuse_change();
create trigger attachment_is_not_emptied before truncate on attachment for each statement execute function refuse_change();

-- One line for each time that a ticket's record was found not to hold; and one where it was looked at again and holds.
create table alarm (
  id       bigint generated always as identity primary key,
  at       timestamptz not null,
  ticket   integer not null,
  holds    boolean not null,
  sentence text not null,
  detail   text not null,
  seen_by  text not null
);
create index alarm_of_ticket on alarm (ticket, id);
create trigger alarm_stays before update or delete on alarm for each row execute function refuse_change();
create trigger alarm_is_not_emptied before truncate on alarm for each statement execute function refuse_change();
grant select, insert on alarm to ${serverRole};
