-- @ next serial
-- Without a gap: whoever opens a ticket waits for whoever does, until that transaction ends.
update ticket_counter set last = last + 1 returning last

-- @ see at once
-- whatever the transaction reads from here on is of one moment
set transaction isolation level repeatable read
