-- What guards the record, as the database's catalogue has it: a line each of kind, name and what it is. Everything is asked of
-- pg_catalog by its name, so that nothing of the same name in another schema answers instead; nothing is printed the way PostgreSQL
-- prints it but for conditions, without blanks and brackets, in which its versions could differ.

-- @ may read migrations
-- a database that has not been migrated to this release does not let its server read them
select coalesce(has_table_privilege(to_regclass('public.flyway_schema_history'), 'select'), false)

-- @ newest migration
select cast(coalesce(max(cast(version as numeric)), 0) as text) from public.flyway_schema_history where success and version ~ '^[0-9]+$'

-- @ standing
with mine as (
  select c.relowner as owner from pg_catalog.pg_class c where c.oid = pg_catalog.to_regclass('public.flyway_schema_history')
), accounts as (
  -- by its name whoever is neither owner nor server; an account beside the server's has its name with an ending
  select r.oid, r.rolname, case when r.oid = (select owner from mine) then 'owner'
    when left(r.rolname, length(current_user)) = current_user then 'server' || substr(r.rolname, length(current_user) + 1)
    else r.rolname end as by
  from pg_catalog.pg_roles r
), schemas as (
  select n.oid, n.nspname as name, n.nspowner, n.nspacl from pg_catalog.pg_namespace n
  where n.nspname !~ '^pg_' and n.nspname <> 'information_schema'
), things as (
  select c.*, s.name || '.' || c.relname as name, c.relkind in ('i', 'I', 'c', 't') as small
  from pg_catalog.pg_class c join schemas s on s.oid = c.relnamespace
), rights as (
  -- whoever owns it needs none
  select 'schema' as kind, s.oid, s.nspowner as owner, a.grantee, a.privilege_type, a.is_grantable, 0 as part
    from schemas s cross join pg_catalog.aclexplode(coalesce(s.nspacl, pg_catalog.acldefault('n', s.nspowner))) a
  union all
  select 'table', t.oid, t.relowner, a.grantee, a.privilege_type, a.is_grantable, 0
    from things t cross join pg_catalog.aclexplode(t.relacl) a where not t.small
  union all
  select 'column', t.oid, t.relowner, a.grantee, a.privilege_type, a.is_grantable, c.attnum
    from things t join pg_catalog.pg_attribute c on c.attrelid = t.oid cross join pg_catalog.aclexplode(c.attacl) a
  union all
  select 'function', p.oid, p.proowner, a.grantee, a.privilege_type, a.is_grantable, 0
    from pg_catalog.pg_proc p join schemas s on s.oid = p.pronamespace
    cross join pg_catalog.aclexplode(coalesce(p.proacl, pg_catalog.acldefault('f', p.proowner))) a
), granted as (
  select kind, oid, part, pg_catalog.string_agg(one, ', ' order by one collate "C") as rights
  from (select kind, oid, part, case grantee when 0 then 'all' else coalesce(
        (select x.by from accounts x where x.oid = grantee), '?')
      end || ' ' || lower(privilege_type) || case when is_grantable then ' and may grant it' else '' end as one
    from rights where grantee <> owner) r
  group by kind, oid, part
)
select 'schema' as kind, s.name, coalesce(g.rights, '') as detail
from schemas s left join granted g on g.kind = 'schema' and g.oid = s.oid
union all
select 'table', t.name, concat_ws('; ', t.relkind, o.by, case when t.relrowsecurity then 'by row' end,
  case when t.relforcerowsecurity then 'forced' end, g.rights)
from things t left join accounts o on o.oid = t.relowner left join granted g on g.kind = 'table' and g.oid = t.oid
where not t.small
union all
select 'column', t.name || ' ' || c.attname, g.rights
from granted g join things t on t.oid = g.oid join pg_catalog.pg_attribute c on c.attrelid = g.oid and c.attnum = g.part
where g.kind = 'column'
union all
select 'policy', t.name || ' ' || p.polname, concat_ws('; ', p.polcmd, p.polpermissive,
  case when p.polroles = array[cast(0 as pg_catalog.oid)] then 'all' else
    (select pg_catalog.string_agg(x.by, ', ' order by x.by) from accounts x where x.oid = any (p.polroles)) end,
  translate(pg_catalog.pg_get_expr(p.polqual, p.polrelid), E' ()\n', ''),
  translate(pg_catalog.pg_get_expr(p.polwithcheck, p.polrelid), E' ()\n', ''))
from pg_catalog.pg_policy p join things t on t.oid = p.polrelid
union all
select 'rule', t.name || ' ' || r.rulename, concat_ws('; ', r.ev_type, r.ev_enabled, r.is_instead)
from pg_catalog.pg_rewrite r join things t on t.oid = r.ev_class
union all
select 'trigger', t.name || ' ' || g.tgname, concat_ws('; ', p.proname, g.tgtype, g.tgenabled, g.tgdeferrable, g.tginitdeferred,
  g.tgattr, pg_catalog.encode(g.tgargs, 'escape'), case when g.tgqual is not null then
    translate(lower(substring(pg_catalog.pg_get_triggerdef(g.oid) from ' WHEN \((.*)\) EXECUTE ')), E' ()\n', '') end)
from pg_catalog.pg_trigger g join things t on t.oid = g.tgrelid join pg_catalog.pg_proc p on p.oid = g.tgfoid
where not g.tgisinternal
union all
select 'function', s.name || '.' || p.proname || '(' || pg_catalog.oidvectortypes(p.proargtypes) || ')',
  concat_ws('; ', l.lanname, o.by, p.prosecdef, p.provolatile, p.proisstrict,
    cast(p.prorettype as pg_catalog.regtype), pg_catalog.array_to_string(p.proconfig, ','), g.rights,
    pg_catalog.encode(pg_catalog.sha256(pg_catalog.convert_to(p.prosrc, 'UTF8')), 'hex'))
from pg_catalog.pg_proc p join schemas s on s.oid = p.pronamespace join pg_catalog.pg_language l on l.oid = p.prolang
left join accounts o on o.oid = p.proowner left join granted g on g.kind = 'function' and g.oid = p.oid
where not exists (select from pg_catalog.pg_depend d where d.objid = p.oid and d.deptype = 'e'
  and d.classid = cast('pg_catalog.pg_proc' as pg_catalog.regclass))
union all
select 'event trigger', cast(e.evtname as pg_catalog.text), cast(e.evtenabled as pg_catalog.text) from pg_catalog.pg_event_trigger e
union all
select 'account', x.by, concat_ws(' ', case when r.rolsuper then 'superuser' end, case when r.rolbypassrls then 'bypassrls' end,
  case when r.rolcreaterole then 'createrole' end, case when x.by = 'owner' then 'owner' end,
  case when r.rolcanlogin and r.rolname <> current_user then 'signs in' end,
  (select pg_catalog.string_agg('member of ' || o.by || case when pg_catalog.pg_has_role(r.oid, o.oid, 'usage') then ' with its rights' else '' end,
      ' ' order by o.by)
    from pg_catalog.pg_auth_members m join accounts o on o.oid = m.roleid where m.member = r.oid))
from pg_catalog.pg_roles r join accounts x on x.oid = r.oid
where r.rolname in (current_user, current_user || '_private', current_user || '_practice')
union all
select 'setting', s.name, s.setting from pg_catalog.pg_settings s where s.name in ('search_path', 'session_replication_role')
