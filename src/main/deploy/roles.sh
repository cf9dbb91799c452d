#!/bin/sh
# Runs roles.sql when a database container starts for the first time.
exec psql -v ON_ERROR_STOP=1 --username postgres \
  -v owner_password="$BENCHTRAIL_OWNER_PASSWORD" -v server_password="$BENCHTRAIL_DATABASE_PASSWORD" -f /roles.sql
