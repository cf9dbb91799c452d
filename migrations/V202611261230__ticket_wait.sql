-- What waits, and for whom: made anew from the job sheet in the transaction of every act, so that it is never behind it.

create table ticket_wait (
  id          bigint generated always as identity primary key,
  ticket      integer not null references ticket,
  kind        text not null,
  entry       integer not null,
  account     text,
  supervisors boolean not null,
  mentors     boolean not null,
  hands       text[] not null,
  asker       text not null,
  since       timestamptz not null,
  due         timestamptz not null
);
create index ticket_wait_of_ticket on ticket_wait (ticket);
create index ticket_wait_for_account on ticket_wait (account, due) where account is not null;
create index ticket_wait_for_supervisors on ticket_wait (due) where supervisors;
create index ticket_wait_for_mentors on ticket_wait (due) where mentors;
create index ticket_wait_of_asker on ticket_wait (asker, since);
grant select, insert, delete on ticket_wait to ${serverRole};

-- Tickets from before, whose waits the server makes when it starts.
create table ticket_wait_owed (ticket integer primary key references ticket);
insert into ticket_wait_owed select serial from ticket where standing <> 'CANCELLED';
grant select, delete on ticket_wait_owed to ${serverRole};
