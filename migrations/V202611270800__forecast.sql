-- What people forecast, for their own eyes and their mentor's: apart from every other table, and of each person apart. Only the
-- training package reads or writes here, and says first whose it asks for. A backup leaves this schema out: what is erased here is
-- gone, and a restored site knows that forecasts were made, and not what they said.
-- left over where the other tables were thrown away to begin anew
drop schema if exists forecast cascade;
create schema forecast;

create table forecast.content (
  ticket     integer     not null,
  entry      integer     not null,
  person     text        not null,
  round      integer     not null,
  kind       text        not null,
  made       timestamptz not null,
  -- the bytes that the commitment of the entry stands for, with its salt
  value      text        not null,
  salt       bytea       not null check (length(salt) = 32),
  -- the catalogue's own chances at that moment, as a JSON object; never shown before the forecast is scored
  reference  text        not null,
  primary key (ticket, entry)
);
create index content_of_person on forecast.content (person, made);

-- Whoever saw the causes of a ticket on a colleague's sheet: a later forecast on it is not scored.
create table forecast.seen (
  ticket integer     not null,
  person text        not null,
  at     timestamptz not null,
  primary key (ticket, person)
);

-- Each reading by a mentor, for the person to see.
create table forecast.reading (
  id     bigint      primary key generated always as identity,
  person text        not null,
  reader text        not null,
  at     timestamptz not null
);
create index reading_of_person on forecast.reading (person, id);

alter table forecast.content enable row level security;
alter table forecast.seen enable row level security;
alter table forecast.reading enable row level security;
create policy own on forecast.content using (person = current_setting('forecast.person', true));
create policy own on forecast.seen using (person = current_setting('forecast.person', true));
create policy own on forecast.reading using (person = current_setting('forecast.person', true));

grant usage on schema forecast to ${serverRole};
grant select, insert, delete on forecast.content to ${serverRole};
grant select, insert, delete on forecast.seen to ${serverRole};
grant select, insert on forecast.reading to ${serverRole};

-- who took, opened or offered which ticket, for the tickets that a person had once
create index trail_entry_taken on trail_entry (actor) where kind in ('handed-over', 'hand-over-offered', 'opened');
