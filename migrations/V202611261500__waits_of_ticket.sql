-- What waits stands in ticket_wait.

drop index ticket_for_supervisors;
drop index ticket_for_mentors;
drop index ticket_offered;
alter table ticket drop column waits_supervisor;
alter table ticket drop column waits_mentor;
