-- Tickets, the people who asked, the trail of every act, and the files attached.
-- The trail is the truth; the ticket's row repeats what lists and searches need, and is checked against a replay by 'verify'.

create sequence ticket_serial start 40718;

-- Personal data of requesters stand here and nowhere in the trail, so that erasing them breaks no hash.
create table requester (
  id      bigint generated always as identity primary key,
  name    text not null,
  contact text not null,
  erased  timestamptz
);

create table ticket (
  serial    integer primary key,
  title     text not null,
  category  text not null,
  device    text not null,
  place     text not null,
  requester bigint not null references requester,
  impact    text not null,
  urgency   text not null,
  priority  text not null,
  step      text not null,
  standing  text not null,
  round     integer not null,
  assignee  text,
  opened    timestamptz not null,
  due       timestamptz not null,
  hold_for  text,
  follow_up timestamptz,
  escalated boolean not null,
  entries   integer not null,
  touched   timestamptz not null,
  ended     timestamptz,
  words     text not null,
  search    tsvector generated always as (to_tsvector('simple', words)) stored
);
create index ticket_open_by_due on ticket (due, serial) where standing = 'OPEN';
create index ticket_by_assignee on ticket (assignee) where standing = 'OPEN';
create index ticket_search on ticket using gin (search);

create table trail_entry (
  ticket    integer not null references ticket,
  entry     integer not null check (entry >= 1),
  at        timestamptz not null,
  actor     text not null,
  kind      text not null,
  canonical bytea not null,
  hash      text not null unique check (hash ~ '^[0-9a-f]{64}$'),
  primary key (ticket, entry)
);

create table attachment (
  sha256  text primary key check (sha256 ~ '^[0-9a-f]{64}$'),
  content bytea not null
);

-- No entry is ever altered or taken away, whoever asks: the server's account lacks the right, and the table refuses as well.
create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception 'the trail is append-only: % on % refused', tg_op, tg_table_name using errcode = 'insufficient_privilege';
end $$;
create trigger trail_entry_stays before update or delete on trail_entry for each row execute function refuse_change();
create trigger trail_entry_is_not_emptied before truncate on trail_entry for each statement execute function refuse_change();

grant usage on sequence ticket_serial to ${serverRole};
grant select, insert, update on requester to ${serverRole};
grant select, insert, update on ticket to ${serverRole};
grant select, insert on trail_entry to ${serverRole};
grant select, insert on attachment to ${serverRole};

-- Scenario files that were loaded, so that none is loaded twice.
create table scenario (
  name   text primary key,
  loaded timestamptz not null default now()
);
grant select, insert on scenario to ${serverRole};
