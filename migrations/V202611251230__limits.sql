-- Limits a shop adds to the published ones. A limit is never changed: a new edition gets a new id. One that is no longer
-- offered stays, because verdicts were given by it.
create table site_limit (
  id       text primary key check (id ~ '^[a-z0-9.]+(-[a-z0-9.]+)*$'),
  quantity text not null,
  unit     text not null,
  lower    numeric,
  upper    numeric,
  source   text not null,
  note     text not null,
  added    timestamptz not null,
  added_by text not null,
  retired  timestamptz,
  retired_by text,
  check (lower is not null or upper is not null)
);
grant select, insert, update on site_limit to ${serverRole};
