-- Whom a ticket is offered to, and what on it waits for those who judge the work. Rows from before learn it with their next act.

alter table ticket add column offered text;
alter table ticket add column waits_supervisor text;
alter table ticket add column waits_mentor text;

create index ticket_offered on ticket (offered) where offered is not null and standing = 'OPEN';
create index ticket_for_supervisors on ticket (due, serial) where waits_supervisor is not null and standing = 'OPEN';
create index ticket_for_mentors on ticket (due, serial) where waits_mentor is not null and standing = 'OPEN';
