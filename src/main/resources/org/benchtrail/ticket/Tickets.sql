-- @ next serial
-- Without a gap: whoever opens a ticket waits for whoever does, until that transaction ends.
update ticket_counter set last = last + 1 returning last
