-- @ of the device
select serial, title, category, device, place, priority, step, standing, round, assignee, opened, due, due_what, hold_for,
  follow_up, clock_stopped, escalated, entries as version, touched
from ticket
where lower(device) = :device
order by serial desc
limit :most
