-- @ next serial
select nextval('ticket_serial')
