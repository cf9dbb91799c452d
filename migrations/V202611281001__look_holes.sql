-- What one changed byte could hide from the look at the whole site.

-- Bytes that may have been altered are read without an error that would end the look.
create function json_read(bytes bytea) returns jsonb language plpgsql immutable strict as $$
begin
  return convert_from(bytes, 'UTF8')::jsonb;
exception when others then
  return null;
end $$;

create function stream_ticket(stream text) returns integer language sql immutable strict parallel safe as $$
  select case when stream ~ '^ticket/[0-9]{1,9}-[0-9]$' then substring(stream from '[0-9]+')::integer end
$$;

-- A salt says of which row it is. Only the newest record of a row keeps its salts: what stood there before is kept nowhere, and
-- shall not be guessed from its commitment.
create function record_about(what text, content jsonb) returns text language sql immutable parallel safe as $$
  select what || ' ' || coalesce(content ->> 'id', content ->> 'number', '')
$$;
alter table disclosure add column about text not null default '';
update disclosure d set about = record_about(r.j ->> 'what', r.j -> 'content')
from (select stream, place, convert_from(canonical, 'UTF8')::jsonb as j from site_record) r
where r.stream = d.stream and r.place = d.place;
delete from disclosure d using disclosure newer
where newer.stream = d.stream and newer.about = d.about and newer.place > d.place;
create index disclosure_about on disclosure (stream, about);

create or replace function append_site_record(to_stream text, what text, content jsonb, hidden text[] default '{}') returns bigint
language plpgsql as $$
declare
  head   stream_head;
  shown  jsonb := content;
  one    text;
  salt   bytea;
  bytes  bytea;
  hashed text;
begin
  perform pg_advisory_xact_lock(7201);
  select * into strict head from stream_head where stream = to_stream;
  if cardinality(hidden) > 0 then
    delete from disclosure d where d.stream = to_stream and d.about = record_about(what, content);
  end if;
  foreach one in array hidden loop
    if content ->> one is not null then
      -- two random identifiers: 244 random bits
      salt := uuid_send(gen_random_uuid()) || uuid_send(gen_random_uuid());
      insert into disclosure (stream, place, name, salt, about)
      values (to_stream, head.place + 1, one, salt, record_about(what, content));
      shown := jsonb_set(shown, array[one], to_jsonb(commitment(salt, what || '.' || one, content ->> one)));
    end if;
  end loop;
  bytes := convert_to(canonical_json(jsonb_build_object('content', shown, 'place', head.place + 1, 'previous', head.hash,
    'stream', to_stream, 'what', what)), 'UTF8');
  hashed := encode(sha256('\x00'::bytea || bytes), 'hex');
  insert into site_record (stream, place, canonical, hash) values (to_stream, head.place + 1, bytes, hashed);
  insert into seal_queue (stream, place, previous, hash) values (to_stream, head.place + 1, head.hash, hashed);
  update stream_head set place = head.place + 1, hash = hashed where stream = to_stream;
  return head.place + 1;
end $$;

-- As before, but that no altered record ends it, and that what differs is named.
create or replace function rows_unlike_records(of_stream text, of_table text, key text) returns table (row_key text, fault text)
language plpgsql stable set timezone to 'UTC' set bytea_output to 'hex' as $$
begin
  return query execute format($query$
    with records as (
      select distinct on (s.j -> 'content' ->> %1$L) s.j -> 'content' ->> %1$L as k, s.j -> 'content' as content, s.place
      from (select r.place, json_read(r.canonical) as j from site_record r where r.stream like %2$L) s
      where s.j ->> 'what' = %3$L
      order by 1, s.place desc
    ), present as (
      select to_jsonb(t) ->> %1$L as k, to_jsonb(t) as row_now from %3$I t
    )
    select coalesce(r.k, p.k),
      case when p.k is null then 'is gone' when r.k is null then 'has no record'
        else 'is not what its record says, or the salt of what is kept apart was changed: ' || u.names end
    from records r
    full join present p on p.k = r.k
    left join lateral (
      select string_agg(e.key, ', ' order by e.key) as names
      from jsonb_each(r.content) e
      where canonical_json(e.value) <> canonical_json(coalesce(
        (select to_jsonb(commitment(d.salt, %3$L || '.' || e.key, p.row_now ->> e.key)) from disclosure d
          where d.stream like %2$L and d.place = r.place and d.name = e.key and d.about = %3$L || ' ' || r.k),
        p.row_now -> e.key, 'null'))
    ) u on p.k is not null and r.k is not null
    where p.k is null or r.k is null or u.names is not null
    order by 1
    limit 200
  $query$, key, of_stream, of_table);
end $$;

-- Who somebody is called, what a token may do, and a known cause as it stands are recorded as well.
drop trigger new_account_is_sealed on account;
drop trigger account_is_sealed on account;
drop trigger new_token_is_sealed on api_token;
drop trigger token_is_sealed on api_token;
create constraint trigger new_account_is_sealed after insert on account deferrable initially deferred for each row
  execute function seal_named_columns('accounts', 'id login roles password_hash active mentor display_name created_at',
    'password_hash display_name');
create constraint trigger account_is_sealed after update on account deferrable initially deferred for each row
  when ((old.id, old.login, old.roles, old.password_hash, old.active, old.mentor, old.display_name, old.created_at)
    is distinct from (new.id, new.login, new.roles, new.password_hash, new.active, new.mentor, new.display_name, new.created_at))
  execute function seal_named_columns('accounts', 'id login roles password_hash active mentor display_name created_at',
    'password_hash display_name');
create constraint trigger new_token_is_sealed after insert on api_token deferrable initially deferred for each row
  execute function seal_named_columns('accounts', 'id account_id name hash created_at expires_at revoked_at scopes', 'name');
create constraint trigger token_is_sealed after update on api_token deferrable initially deferred for each row
  when ((old.id, old.account_id, old.hash, old.created_at, old.expires_at, old.revoked_at, old.scopes, old.name)
    is distinct from (new.id, new.account_id, new.hash, new.created_at, new.expires_at, new.revoked_at, new.scopes, new.name))
  execute function seal_named_columns('accounts', 'id account_id name hash created_at expires_at revoked_at scopes', 'name');
create constraint trigger new_known_cause_is_sealed after insert on known_cause deferrable initially deferred for each row
  execute function seal_named_columns('knowledge',
    'id title category cause_id shows apart cure state merged_into ticket proposed proposed_by version changed', 'title shows apart cure');
create constraint trigger known_cause_is_sealed after update on known_cause deferrable initially deferred for each row
  when ((old.id, old.title, old.category, old.cause_id, old.shows, old.apart, old.cure, old.state, old.merged_into, old.ticket,
      old.proposed, old.proposed_by, old.version, old.changed)
    is distinct from (new.id, new.title, new.category, new.cause_id, new.shows, new.apart, new.cure, new.state, new.merged_into, new.ticket,
      new.proposed, new.proposed_by, new.version, new.changed))
  execute function seal_named_columns('knowledge',
    'id title category cause_id shows apart cure state merged_into ticket proposed proposed_by version changed', 'title shows apart cure');

-- From which number on no ticket is missing is said once and for all.
create trigger ticket_counter_begins before update of since or delete on ticket_counter for each row execute function refuse_change();

-- What is there already is recorded now.
set local timezone to 'UTC';
set local bytea_output to 'hex';
do $$
begin
  perform append_site_record('accounts', 'account', (select jsonb_object_agg(key, value) from jsonb_each(to_jsonb(r))
      where key = any(string_to_array('id login roles password_hash active mentor display_name created_at', ' '))),
      '{password_hash,display_name}')
    from (select * from account order by id) r;
  perform append_site_record('accounts', 'api_token', (select jsonb_object_agg(key, value) from jsonb_each(to_jsonb(r))
      where key = any(string_to_array('id account_id name hash created_at expires_at revoked_at scopes', ' '))), '{name}')
    from (select * from api_token order by id) r;
  perform append_site_record('knowledge', 'known_cause', (select jsonb_object_agg(key, value) from jsonb_each(to_jsonb(r))
      where key = any(string_to_array(
        'id title category cause_id shows apart cure state merged_into ticket proposed proposed_by version changed', ' '))),
      '{title,shows,apart,cure}')
    from (select * from known_cause order by id) r;
  perform append_site_record('census', 'ticket_counter', jsonb_build_object('one', one, 'since', since)) from ticket_counter;
end $$;

-- When a witness signed is said by its signature.
alter table cosignature disable trigger cosignature_stays;
update cosignature set at = to_timestamp(('x' || encode(substring(decode(split_part(line, ' ', 3), 'base64') from 5 for 8), 'hex'))::bit(64)::bigint);
alter table cosignature enable trigger cosignature_stays;
