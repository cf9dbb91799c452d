-- The queue in the order of number, priority or last act, by kind of trouble and by device.

-- the order of core.method.Priority
alter table ticket add column priority_rank smallint generated always as (
  case priority when 'AT_ONCE' then 0 when 'SAME_DAY' then 1 when 'THIS_WEEK' then 2 else 3 end) stored;

create index ticket_by_number on ticket (standing, serial);
create index ticket_by_priority on ticket (standing, priority_rank, due, serial);
create index ticket_by_last_act on ticket (standing, touched, serial);
create index ticket_of_category on ticket (category, standing, due, serial);
create index ticket_on_device on ticket (device, standing, due, serial);
