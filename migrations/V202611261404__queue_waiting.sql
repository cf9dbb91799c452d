-- The queue asks which tickets wait for somebody's answer.

create index ticket_wait_offers on ticket_wait (ticket) where kind = 'OFFER';
