-- The accounts and the database of Benchtrail: one owns the tables and migrates, another is the servers', two more are beside it
-- (own-accounts.sql). Run it once as a superuser (sudo -u postgres):
--   psql -v ON_ERROR_STOP=1 -v owner_password=... -v server_password=... -f src/main/deploy/roles.sql
create role benchtrail_owner login password :'owner_password';
create role benchtrail_server login password :'server_password';
\ir own-accounts.sql
create database benchtrail owner benchtrail_owner;
revoke all on database benchtrail from public;
grant connect on database benchtrail to benchtrail_server;
\connect benchtrail
-- similar words are found by it; it comes with PostgreSQL (package postgresql-contrib where it is apart)
create extension if not exists pg_trgm;
