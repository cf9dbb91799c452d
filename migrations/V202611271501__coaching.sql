-- How far each person has read the reviews of their own work: what a supervisor may see of it is what they had read by then. And who
-- looked at it, for that person.
create table coaching_read (
  person text        not null,
  lot    text        not null references audit_lot,
  -- last act of the lot that they had before them
  place  bigint      not null,
  at     timestamptz not null,
  primary key (person, lot)
);
create table coaching_look (
  id     bigint      primary key generated always as identity,
  person text        not null,
  reader text        not null,
  at     timestamptz not null
);
create index coaching_look_of on coaching_look (person, id);
create trigger coaching_look_stays before update or delete on coaching_look for each row execute function refuse_change();
grant select, insert, update on coaching_read to ${serverRole};
grant select, insert on coaching_look to ${serverRole};
