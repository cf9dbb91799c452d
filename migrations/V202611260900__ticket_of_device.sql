-- The latest tickets of one device are found at once, however many it has. The names of all devices are read by it as before.
create index ticket_of_device on ticket (device, place, serial);
drop index ticket_device;
