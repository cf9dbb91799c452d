-- The server tells guards that a later release made from guards that somebody changed by which migrations have run.
grant select on flyway_schema_history to ${serverRole};
