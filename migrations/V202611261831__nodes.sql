-- The servers that run on this database, each with its release: one that is older says so of what a newer one wrote.
create table server_node (
  id      uuid        primary key,
  host    text        not null,
  release text        not null,
  started timestamptz not null,
  seen    timestamptz not null,
  -- told to end; null if it runs, or died
  ended   timestamptz
);
grant select, insert, update, delete on server_node to ${serverRole};
