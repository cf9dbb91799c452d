-- A look that died with its server is begun anew by itself, and says so; and what was found names the first head that proves it.

alter table verification_run
  add column interrupted boolean not null default false,
  -- the look that was interrupted, of which this is made anew
  add column again bigint references verification_run;
grant update (interrupted) on verification_run to ${serverRole};

alter table verification_finding
  add column leaf bigint,
  add column head bigint;
