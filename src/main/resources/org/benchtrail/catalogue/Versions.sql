-- @ lock
select 1 as locked
from pg_advisory_xact_lock(:lock)
