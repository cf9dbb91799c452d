-- Filters of the queue that a person keeps under a name.

create table saved_filter (
  id    bigint generated always as identity primary key,
  owner text        not null,
  name  text        not null check (length(name) between 1 and 60),
  -- as it stands in an address
  query text        not null check (length(query) between 1 and 2000),
  kept  timestamptz not null,
  unique (owner, name)
);
grant select, insert, delete on saved_filter to ${serverRole};
grant update (query, kept) on saved_filter to ${serverRole};
