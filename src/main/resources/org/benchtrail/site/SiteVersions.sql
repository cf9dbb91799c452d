-- @ last
select coalesce(max(number), 0) as number
from site_version

-- @ keep
select 1 as kept
from pg_advisory_xact_lock_shared(:lock)

-- @ lock
select 1 as locked
from pg_advisory_xact_lock(:lock)
