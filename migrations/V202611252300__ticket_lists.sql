-- What the lists of tickets are read by: the queue in its order, by step, person and place; what waits; the names given before.

drop index ticket_open_by_due;
drop index ticket_by_assignee;
create index ticket_by_due on ticket (standing, due, serial) include (follow_up);
create index ticket_at_step on ticket (standing, step, due, serial);
create index ticket_of_assignee on ticket (assignee, standing, due, serial);
create index ticket_at_place on ticket (lower(place), standing, due, serial);
create index ticket_on_hold on ticket (standing, due, serial) where follow_up is not null;
create index ticket_place on ticket (place);
create index ticket_device on ticket (device);

-- Whoever reports again is found by name and contact.
create index requester_known on requester (name, contact);
