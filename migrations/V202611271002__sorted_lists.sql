-- A list of one person, place or kind in another order than by what is due is sorted from its index alone, and only the lines of the
-- page are read from the table. The place stands in its index as it is written too: else the index is not taken to know it.
drop index ticket_of_assignee;
create index ticket_of_assignee on ticket (assignee, standing, due, serial) include (priority_rank, touched);
drop index ticket_at_place;
create index ticket_at_place on ticket (lower(place), standing, due, serial) include (place, priority_rank, touched);
drop index ticket_of_category;
create index ticket_of_category on ticket (category, standing, due, serial) include (step, priority_rank, touched);
