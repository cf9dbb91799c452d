-- The whole site held against the log: what is looked at, and what a look found.

-- Of accounts and tokens only what is named is recorded, so that nothing gets into the log by being added to the table.
create function seal_named_columns() returns trigger language plpgsql set timezone to 'UTC' set bytea_output to 'hex' as $$
begin
  perform append_site_record(tg_argv[0], tg_table_name,
    (select jsonb_object_agg(key, value) from jsonb_each(to_jsonb(new)) where key = any(string_to_array(tg_argv[1], ' '))),
    string_to_array(tg_argv[2], ' '));
  return null;
end $$;
drop trigger new_account_is_sealed on account;
drop trigger account_is_sealed on account;
drop trigger new_token_is_sealed on api_token;
drop trigger token_is_sealed on api_token;
create constraint trigger new_account_is_sealed after insert on account deferrable initially deferred for each row
  execute function seal_named_columns('accounts', 'id login roles password_hash active mentor', 'password_hash');
create constraint trigger account_is_sealed after update on account deferrable initially deferred for each row
  when ((old.login, old.roles, old.password_hash, old.active, old.mentor)
    is distinct from (new.login, new.roles, new.password_hash, new.active, new.mentor))
  execute function seal_named_columns('accounts', 'id login roles password_hash active mentor', 'password_hash');
create constraint trigger new_token_is_sealed after insert on api_token deferrable initially deferred for each row
  execute function seal_named_columns('accounts', 'id account_id name hash created_at expires_at revoked_at', 'name');
create constraint trigger token_is_sealed after update on api_token deferrable initially deferred for each row
  when ((old.account_id, old.hash, old.expires_at, old.revoked_at)
    is distinct from (new.account_id, new.hash, new.expires_at, new.revoked_at))
  execute function seal_named_columns('accounts', 'id account_id name hash created_at expires_at revoked_at', 'name');

-- Rows of a table that are not what the last record about them says, that have none, or that are gone. What a record does not name
-- is not compared.
create function rows_unlike_records(of_stream text, of_table text, key text) returns table (row_key text, fault text)
language plpgsql stable set timezone to 'UTC' set bytea_output to 'hex' as $$
begin
  return query execute format($query$
    with records as (
      select distinct on (s.j -> 'content' ->> %1$L) s.j -> 'content' ->> %1$L as k, s.j -> 'content' as content, s.place
      from (select r.place, convert_from(r.canonical, 'UTF8')::jsonb as j from site_record r where r.stream = %2$L) s
      where s.j ->> 'what' = %3$L
      order by 1, s.place desc
    ), present as (
      select to_jsonb(t) ->> %1$L as k, to_jsonb(t) as row_now from %3$I t
    )
    select coalesce(r.k, p.k),
      case when p.k is null then 'is gone' when r.k is null then 'has no record' else 'is not what its record says' end
    from records r full join present p on p.k = r.k
    where p.k is null or r.k is null or canonical_json(r.content) <> canonical_json(
      (select jsonb_object_agg(e.key, coalesce(
          (select to_jsonb(commitment(d.salt, %3$L || '.' || e.key, p.row_now ->> e.key)) from disclosure d
            where d.stream = %2$L and d.place = r.place and d.name = e.key),
          p.row_now -> e.key, 'null'))
        from jsonb_object_keys(r.content) as e(key)))
    order by 1
    limit 20
  $query$, key, of_stream, of_table);
end $$;

-- From which number on there is no gap.
alter table ticket_counter add column since integer;
update ticket_counter set since = last;
alter table ticket_counter alter column since set not null;

create table verification_run (
  id       bigint generated always as identity primary key,
  started  timestamptz not null,
  seen     timestamptz not null,
  ended    timestamptz,
  by       text not null,
  -- leaves there were when it began, and how many were looked at
  size     bigint not null,
  done     bigint not null default 0,
  stopped  boolean not null default false
);
create unique index verification_run_alone on verification_run ((true)) where ended is null;
create table verification_finding (
  run      bigint not null references verification_run,
  number   integer not null,
  what     text not null,
  place    text not null,
  sentence text not null,
  primary key (run, number)
);
create trigger verification_finding_stays before update or delete on verification_finding
  for each row execute function refuse_change();
grant select, insert on verification_run, verification_finding to ${serverRole};
grant update (seen, ended, done, stopped) on verification_run to ${serverRole};
