-- Known causes with the history of each, and the cases: closed tickets as the search sees them.
-- All of it is written as a by-product of closing tickets; the trail stays the truth about a ticket.

-- a trusted extension: the owner of the database may create it
create extension if not exists pg_trgm;

create table known_cause (
  id             bigint generated always as identity primary key,
  title          text not null,
  category       text not null,
  -- id in the cause catalogue
  cause_id       text,
  shows          text not null,
  apart          text not null,
  cure           text not null,
  state          text not null check (state in ('DRAFT', 'CONFIRMED', 'FLAGGED', 'RETIRED')),
  merged_into    bigint references known_cause,
  -- how often it was confirmed, and how many of these by measurement; counted anew from known_cause_confirmation
  confirmations  integer not null default 0,
  measured       integer not null default 0,
  last_confirmed timestamptz,
  confirmed_by   text,
  -- serial of the ticket it came from
  ticket         integer,
  proposed       timestamptz not null,
  proposed_by    text not null,
  version        integer not null,
  changed        timestamptz not null,
  search         tsvector not null default ''
);
create index known_cause_search on known_cause using gin (search) with (fastupdate = off);
create index known_cause_of_catalogue on known_cause (cause_id);
create index known_cause_changed on known_cause (changed desc);

-- Who found it true, and when; a ticket confirms one cause at most.
create table known_cause_confirmation (
  id       bigint generated always as identity primary key,
  cause    bigint not null references known_cause,
  ticket   integer unique,
  at       timestamptz not null,
  who      text not null,
  measured boolean not null
);
create index known_cause_confirmation_cause on known_cause_confirmation (cause, at);

create table known_cause_change (
  id      bigint generated always as identity primary key,
  cause   bigint not null references known_cause,
  version integer not null,
  at      timestamptz not null,
  who     text not null,
  what    text not null,
  reason  text not null,
  ticket  integer,
  before  text,
  after   text not null,
  unique (cause, version)
);

create function known_cause_change_refuses_change() returns trigger language plpgsql as $$
begin
  raise exception 'known_cause_change is append-only' using errcode = 'insufficient_privilege';
end $$;
create trigger known_cause_change_append_only
  before update or delete or truncate on known_cause_change
  for each statement execute function known_cause_change_refuses_change();

create table closed_case (
  serial    integer primary key,
  title     text not null,
  device    text not null,
  category  text not null,
  cause     text not null,
  cause_id  text,
  sureness  text not null,
  body      text not null,
  -- each as 'finding=value'
  findings  text[] not null,
  closed    timestamptz not null,
  closed_by text not null,
  minutes   integer,
  known     bigint references known_cause,
  -- a ticket that is open again has solved nothing
  reopened  boolean not null default false,
  search    tsvector not null
);
-- the newest cases are walked first: a common word is found there soon enough, and nobody ranks hundreds of thousands of rows
create index closed_case_newest on closed_case (closed desc, serial desc) where not reopened;
create index closed_case_newest_of_category on closed_case (category, closed desc, serial desc) where not reopened;
create index closed_case_search on closed_case using gin (search) with (fastupdate = off);
create index closed_case_findings on closed_case using gin (findings) with (fastupdate = off);
create index closed_case_known on closed_case (known, closed desc) where known is not null;

-- Every word that a case or a known cause has, for finding what was mistyped.
create table knowledge_word (
  word text primary key
);
create index knowledge_word_alike on knowledge_word using gin (word gin_trgm_ops) with (fastupdate = off);
create index knowledge_word_beginning on knowledge_word (word text_pattern_ops);

grant select, insert, update on known_cause to ${serverRole};
grant select, insert, update, delete on known_cause_confirmation to ${serverRole};
grant select, insert on known_cause_change to ${serverRole};
grant select, insert, update on closed_case to ${serverRole};
grant select, insert on knowledge_word to ${serverRole};
