-- Versions of the cause catalogue. A ranking names the version it was made with, so none is ever altered or taken away.

create table catalogue_version (
  number    integer primary key check (number >= 1),
  made_at   timestamptz not null,
  made_by   text not null,
  note      text not null,
  origin    text not null check (origin in ('DELIVERED', 'EDITED', 'LEARNED', 'REVERSED')),
  -- the practice catalogue as it was typed or delivered
  practice  text not null,
  -- figures learned on top of it, JSON; text, because every digit of a number is kept; null if nothing is learned
  figures   text,
  -- what they were learned from: the moment that ages are taken from, and the cases; JSON
  basis     text,
  -- the version that this one restores
  restores  integer references catalogue_version,
  check ((figures is null) = (basis is null)),
  check ((origin = 'REVERSED') = (restores is not null))
);

create function catalogue_version_refuses_change() returns trigger language plpgsql as $$
begin
  raise exception 'catalogue_version is append-only' using errcode = 'insufficient_privilege';
end $$;
create trigger catalogue_version_stays before update or delete or truncate on catalogue_version
  for each statement execute function catalogue_version_refuses_change();

grant select, insert on catalogue_version to ${serverRole};
