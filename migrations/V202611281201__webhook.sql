-- How far each receiver of changes has been told. Its address and its secret stand in the settings of the servers.
create table webhook (
  name       text        primary key,
  -- where to go on in the feed of changes
  next       bigint      not null,
  -- no server tells it before: one is at it, or it did not take the last message
  not_before timestamptz not null,
  failures   integer     not null default 0,
  answered   timestamptz,
  answer     text        not null default ''
);

grant select, insert, update on webhook to ${serverRole};
