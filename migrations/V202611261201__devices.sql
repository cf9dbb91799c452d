-- Places, teams and devices of the site. A row says what is so now; every change is kept beside it, who made it and what was before.

create table place (
  id      bigint generated always as identity primary key,
  name    text not null,
  -- nominal voltage where it is not the site's
  mains   text check (mains in ('100', '120', '230')),
  closed  boolean not null default false,
  version integer not null default 1
);
create unique index place_name on place (lower(name));

create table team (
  id      bigint generated always as identity primary key,
  name    text not null,
  members text[] not null,
  closed  boolean not null default false,
  version integer not null default 1
);
create unique index team_name on team (lower(name));

create table device (
  id            bigint generated always as identity primary key,
  label         text not null,
  category      text not null,
  model         text not null,
  serial        text not null,
  place         bigint references place,
  connection    text not null,
  nameplate     text not null,
  warranty      date,
  state         text not null,
  note          text not null,
  version       integer not null default 1
);
create unique index device_label on device (lower(label));
create index device_of_place on device (place);

create table site_change (
  id      bigint generated always as identity primary key,
  at      timestamptz not null,
  who     text not null,
  kind    text not null check (kind in ('PLACE', 'TEAM', 'DEVICE')),
  subject bigint not null,
  field   text not null,
  before  text not null,
  after   text not null
);
create index site_change_of on site_change (kind, subject, id);
create trigger site_change_stays before update or delete on site_change for each row execute function refuse_change();
create trigger site_change_is_not_emptied before truncate on site_change
  for each statement execute function refuse_change();

grant select, insert, update on place, team, device to ${serverRole};
grant select, insert on site_change to ${serverRole};

-- The tickets of a device, wherever it stood when they were opened.
create index ticket_by_device on ticket (lower(device), serial);
