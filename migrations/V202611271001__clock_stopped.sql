-- Whether the hold that a ticket is on stops its clock, by what the site had decided when the hold began. A row that was last made
-- before this says no until the next act on it: lists then show its due time as they did.
alter table ticket add column clock_stopped boolean not null default false;
