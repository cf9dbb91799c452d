-- @ all
-- Whatever refers to another comes after it, as far as that is known from the order of depth.
with recursive own as (
  select c.oid, c.relname as name from pg_class c
  where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r' and c.relname <> 'flyway_schema_history'
), depth as (
  select oid, 0 as level from own
  union
  select k.conrelid, d.level + 1 from depth d join pg_constraint k on k.confrelid = d.oid
  where k.contype = 'f' and k.conrelid <> k.confrelid and d.level < 50
)
select own.name, max(depth.level) as level,
  (select string_agg(quote_ident(a.attname), ', ' order by a.attnum) from pg_attribute a
    where a.attrelid = own.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = '') as columns
from own join depth on depth.oid = own.oid
group by own.oid, own.name
order by 2, 1

-- @ sequences
select c.relname as name, a.attname as columns, 0 as level
from pg_class c join pg_attribute a on a.attrelid = c.oid
where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r' and a.attidentity <> ''
order by 1
