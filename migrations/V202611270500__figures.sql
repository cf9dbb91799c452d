-- What figures over many tickets are read by: tickets by when they were opened, and of each trail the moves alone.
create index ticket_by_opened on ticket (opened);
create index trail_entry_moves on trail_entry (ticket, entry) include (kind, at)
  where kind in ('advanced', 'ruled-out', 'rethought', 'verify-failed', 'closed', 'cancelled', 'reopened', 'held', 'resumed');
