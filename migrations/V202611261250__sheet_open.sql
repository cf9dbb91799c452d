-- Who has which job sheet open, by connection, so that every node knows it; and word of every change, to every node.

create unlogged table sheet_open (
  connection uuid primary key,
  node       uuid not null,
  ticket     integer not null,
  account    text not null,
  until      timestamptz not null
);
create index sheet_open_of_ticket on sheet_open (ticket);
create index sheet_open_of_node on sheet_open (node);
grant select, insert, update, delete on sheet_open to ${serverRole};

create function tell_of_ticket() returns trigger language plpgsql as $$
begin
  perform pg_notify('ticket', new.serial::text);
  return null;
end $$;
create trigger ticket_is_told after update of entries on ticket for each row execute function tell_of_ticket();

create function tell_of_sheet() returns trigger language plpgsql as $$
begin
  perform pg_notify('ticket', (case when tg_op = 'DELETE' then old.ticket else new.ticket end)::text);
  return null;
end $$;
create trigger sheet_is_told after insert or delete on sheet_open for each row execute function tell_of_sheet();
