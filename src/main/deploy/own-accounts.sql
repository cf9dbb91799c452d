-- The two accounts that the servers' account takes on for a moment: for what is one person's own, and for practice jobs. Nobody signs
-- in as them. roles.sql runs this; for a database that was made before there were these two, run it once as a superuser, with the
-- name of the servers' account where it is another:
--   psql -v ON_ERROR_STOP=1 -v server=benchtrail_server -f src/main/deploy/own-accounts.sql
\if :{?server}
\else
\set server benchtrail_server
\endif
\set private :server _private
\set practice :server _practice
create role :"private" nologin;
create role :"practice" nologin;
-- none of their rights before it takes them on; from PostgreSQL 16 on a grant keeps what stood here when it was made
alter role :"server" noinherit;
grant :"private", :"practice" to :"server";
