-- That somebody erased what they had forecast; the entry on the ticket's trail stays, and what it stands for can no longer be opened.
create table forecast_erasure (
  id     bigint      primary key generated always as identity,
  ticket integer     not null,
  entry  integer     not null,
  at     timestamptz not null
);
grant select, insert on forecast_erasure to ${serverRole};
create constraint trigger forecast_erasure_is_sealed after insert on forecast_erasure
  deferrable initially deferred for each row execute function seal_row('erasures', '', '');

-- Forecasts that were due and not made, by whose they were.
create table forecast.skipped (
  ticket integer     not null,
  entry  integer     not null,
  person text        not null,
  at     timestamptz not null,
  primary key (ticket, entry)
);
create index skipped_of_person on forecast.skipped (person);
alter table forecast.skipped enable row level security;
create policy own on forecast.skipped using (person = current_setting('forecast.person', true));
grant select, insert on forecast.skipped to ${serverRole};
