-- @ last
select coalesce(max(number), 0) as number
from catalogue_version

-- @ lock
select 1 as locked
from pg_advisory_xact_lock(:lock)
