-- Closed tickets as cases to learn from: waiting for a supervisor, accepted, left out, or withdrawn.

create table shop_case (
  id           bigint generated always as identity primary key,
  ticket       integer not null references ticket,
  closed_at    timestamptz not null,
  state        text not null check (state in ('WAITING', 'ACCEPTED', 'LEFT_OUT', 'WITHDRAWN')),
  category     text,
  cause        text,
  cause_words  text,
  technician   text,
  site         text,
  confirmation text,
  -- JSON
  observations text,
  forecast     text,
  accepted_by  text,
  accepted_at  timestamptz,
  withdrawn_by text,
  withdrawn_at timestamptz,
  reason       text,
  unique (ticket, closed_at),
  check (state <> 'ACCEPTED' or (cause is not null and category is not null and technician is not null
    and confirmation is not null and observations is not null and accepted_by is not null and accepted_at is not null)),
  check (accepted_by is distinct from technician or accepted_by is null),
  check (state not in ('LEFT_OUT', 'WITHDRAWN') or reason is not null)
);
create index shop_case_by_state on shop_case (state, closed_at, id);

-- What was closed before there was this list.
insert into shop_case (ticket, closed_at, state) select serial, ended, 'WAITING' from ticket where standing = 'CLOSED' and ended is not null;

create table shop_case_record (
  id     bigint generated always as identity primary key,
  at     timestamptz not null,
  who    text not null,
  what   text not null,
  ticket integer not null,
  detail text not null
);

create function shop_case_record_refuses_change() returns trigger language plpgsql as $$
begin
  raise exception 'shop_case_record is append-only' using errcode = 'insufficient_privilege';
end $$;
create trigger shop_case_record_stays before update or delete or truncate on shop_case_record
  for each statement execute function shop_case_record_refuses_change();

grant select, insert, update on shop_case to ${serverRole};
grant select, insert on shop_case_record to ${serverRole};
