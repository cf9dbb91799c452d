-- @ rows
-- what never gets less
select 'tickets' as what, count(*) as count from ticket
union all select 'highest ticket number without its check digit', last from ticket_counter
union all select 'requesters', count(*) from requester
union all select 'files', count(*) from attachment

-- @ leaves
select split_part(stream, '/', 1) as what, count(*) as count
from seal_leaf where index >= :from and index < :to group by 1
