-- The log: one order over everything that matters, of which others can keep the head. A leaf names what it seals by stream, place and
-- hash only. What is to be sealed is queued in the transaction that makes it; the sealing job numbers it afterwards.

create table seal_queue (
  id       bigint generated always as identity primary key,
  at       timestamptz not null default transaction_timestamp(),
  stream   text not null,
  -- of a file the sealing job gives it
  place    bigint,
  -- hash of the place before; what has no chain has none
  previous text,
  hash     text not null
);

-- What did not go on where its stream ends: never sealed, kept to be looked into.
create table seal_stuck (like seal_queue);

create table seal_leaf (
  index     bigint primary key,
  stream    text not null,
  place     bigint not null,
  hash      bytea not null check (length(hash) = 32),
  leaf_hash bytea not null check (length(leaf_hash) = 32),
  unique (stream, place)
);

-- The hash over each full tile: hash n of that level.
create table seal_node (
  level smallint not null check (level between 1 and 7),
  n     bigint not null,
  hash  bytea not null check (length(hash) = 32),
  primary key (level, n)
);

create table seal_head (
  one      boolean primary key default true check (one),
  size     bigint not null,
  -- the hashes of the full subtrees, the largest first
  frontier bytea not null check (length(frontier) % 32 = 0)
);
insert into seal_head (size, frontier) values (0, '');

create table checkpoint (
  size      bigint primary key,
  signed_at timestamptz not null,
  note      text not null
);

-- What witnesses signed, the first of each for each size; and every answer that one gave.
create table cosignature (
  size bigint not null references checkpoint,
  key  text not null,
  at   timestamptz not null,
  line text not null,
  primary key (size, key)
);
create table witness_event (
  id      bigint generated always as identity primary key,
  at      timestamptz not null,
  witness text not null,
  size    bigint not null,
  status  integer not null,
  detail  text not null
);
create index witness_event_of on witness_event (witness, id desc);

-- Records of the site, each stream a chain like a ticket's: the bytes that were hashed, with stream, place and previous hash inside.
create table stream_head (
  stream text primary key,
  place  bigint not null,
  hash   text not null
);
insert into stream_head (stream, place, hash)
select stream, 0, repeat('0', 64)
from unnest(array['accounts', 'requesters', 'cases', 'catalogue', 'knowledge', 'limits', 'policy', 'erasures', 'census', 'keys',
  'incidents']) as stream;

create table site_record (
  stream    text not null,
  place     bigint not null,
  canonical bytea not null,
  hash      text not null,
  primary key (stream, place)
);

-- The salts of what stands in a record as a commitment; the value stands in its own table, and nowhere else.
create table disclosure (
  stream text not null,
  place  bigint not null,
  name   text not null,
  salt   bytea not null check (length(salt) = 32),
  primary key (stream, place, name)
);

-- JSON by RFC 8785, for names in ASCII; a number that is no short whole one is written as text, as it is everywhere in the trail.
create function canonical_json(value jsonb) returns text language plpgsql immutable strict parallel safe as $$
begin
  case jsonb_typeof(value)
    when 'object' then
      return '{' || coalesce((select string_agg(to_json(e.key)::text || ':' || canonical_json(e.value), ',' order by e.key collate "C")
        from jsonb_each(value) e), '') || '}';
    when 'array' then
      return '[' || coalesce((select string_agg(canonical_json(e.value), ',' order by e.n)
        from jsonb_array_elements(value) with ordinality as e(value, n)), '') || ']';
    when 'string' then
      return to_json(value #>> '{}')::text;
    when 'number' then
      return case when value::text ~ '^(0|-?[1-9][0-9]{0,14})$' then value::text else to_json(value::text)::text end;
    else
      return value::text;
  end case;
end $$;

-- A commitment: 0x02, 32 bytes of salt, the name, 0x00, the value in UTF-8 and NFC.
create function commitment(salt bytea, name text, value text) returns text language sql immutable strict parallel safe as $$
  select encode(sha256('\x02'::bytea || salt || convert_to(name, 'UTF8') || '\x00'::bytea
    || convert_to(normalize(value, NFC), 'UTF8')), 'hex')
$$;

-- Adds a record to a stream of the site, and queues it. Whoever adds one waits for whoever does, until that transaction ends: one
-- lock for all streams, so that nobody waits in a circle.
create function append_site_record(to_stream text, what text, content jsonb, hidden text[] default '{}') returns bigint
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
  foreach one in array hidden loop
    if content ->> one is not null then
      -- two random identifiers: 244 random bits
      salt := uuid_send(gen_random_uuid()) || uuid_send(gen_random_uuid());
      insert into disclosure (stream, place, name, salt) values (to_stream, head.place + 1, one, salt);
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

-- The content of a record is the row, without what is no part of it.
create function sealed_content(row_now jsonb, left_out text) returns jsonb language sql immutable parallel safe as $$
  select row_now - string_to_array(left_out, ' ')
$$;

-- Arguments: stream, columns left out, columns that stand as commitments; names with blanks between.
create function seal_row() returns trigger language plpgsql set timezone to 'UTC' set bytea_output to 'hex' as $$
begin
  perform append_site_record(tg_argv[0], tg_table_name, sealed_content(to_jsonb(new), tg_argv[1]),
    string_to_array(tg_argv[2], ' '));
  return null;
end $$;

-- At the end of the transaction, when it waits for nothing else any more.
create constraint trigger account_record_is_sealed after insert on account_record
  deferrable initially deferred for each row execute function seal_row('accounts', '', 'detail');
create constraint trigger new_account_is_sealed after insert on account
  deferrable initially deferred for each row
  execute function seal_row('accounts', 'display_name zone failed_attempts locked_until session_version created_at', 'password_hash');
create constraint trigger account_is_sealed after update on account
  deferrable initially deferred for each row
  when ((old.login, old.roles, old.password_hash, old.active, old.mentor)
    is distinct from (new.login, new.roles, new.password_hash, new.active, new.mentor))
  execute function seal_row('accounts', 'display_name zone failed_attempts locked_until session_version created_at', 'password_hash');
create constraint trigger new_token_is_sealed after insert on api_token
  deferrable initially deferred for each row execute function seal_row('accounts', 'last_used', 'name');
create constraint trigger token_is_sealed after update on api_token
  deferrable initially deferred for each row
  when ((old.account_id, old.hash, old.expires_at, old.revoked_at)
    is distinct from (new.account_id, new.hash, new.expires_at, new.revoked_at))
  execute function seal_row('accounts', 'last_used', 'name');
create constraint trigger requester_is_sealed after insert or update on requester
  deferrable initially deferred for each row execute function seal_row('requesters', '', 'name contact');
create constraint trigger case_record_is_sealed after insert on shop_case_record
  deferrable initially deferred for each row execute function seal_row('cases', '', 'detail');
create constraint trigger case_is_sealed after insert or update on shop_case
  deferrable initially deferred for each row
  execute function seal_row('cases', '', 'cause_words observations forecast reason');
create constraint trigger catalogue_version_is_sealed after insert on catalogue_version
  deferrable initially deferred for each row execute function seal_row('catalogue', '', 'note practice figures basis');
create constraint trigger known_cause_change_is_sealed after insert on known_cause_change
  deferrable initially deferred for each row execute function seal_row('knowledge', '', 'reason before after');
create constraint trigger site_limit_is_sealed after insert or update on site_limit
  deferrable initially deferred for each row execute function seal_row('limits', '', '');
create constraint trigger site_version_is_sealed after insert on site_version
  deferrable initially deferred for each row execute function seal_row('policy', '', 'note');

-- A ticket's number with its check digit (ISO/IEC 7064 MOD 11,10).
create function ticket_number(serial integer) returns text language plpgsql immutable strict parallel safe as $$
declare
  carried integer := 10;
  summed  integer;
begin
  for i in 1..length(serial::text) loop
    summed := (carried + substr(serial::text, i, 1)::integer) % 10;
    carried := (case when summed = 0 then 10 else summed end) * 2 % 11;
  end loop;
  return serial || '-' || (11 - carried) % 10;
end $$;

create function seal_entry() returns trigger language plpgsql as $$
begin
  insert into seal_queue (stream, place, previous, hash)
  values ('ticket/' || ticket_number(new.ticket), new.entry, convert_from(new.canonical, 'UTF8')::json ->> 'previous', new.hash);
  return null;
end $$;
create trigger trail_entry_is_sealed after insert on trail_entry for each row execute function seal_entry();

-- The record of a file is its number of bytes and their hash.
create function file_hash(content bytea) returns text language sql immutable strict parallel safe as $$
  select encode(sha256('\x00'::bytea || convert_to(canonical_json(jsonb_build_object('bytes', length(content), 'sha256',
    encode(sha256(content), 'hex'))), 'UTF8')), 'hex')
$$;
create function seal_file() returns trigger language plpgsql as $$
begin
  insert into seal_queue (stream, hash) values ('files', file_hash(new.content));
  return null;
end $$;
create trigger attachment_is_sealed after insert on attachment for each row execute function seal_file();

-- Numbers without a gap: a missing one is a missing ticket.
create table ticket_counter (
  one  boolean primary key default true check (one),
  last integer not null
);
insert into ticket_counter (last) select coalesce(max(serial), 40717) from ticket;
drop sequence ticket_serial;

-- What is there already is sealed now: proven from today on, not before.
set local timezone to 'UTC';
set local bytea_output to 'hex';
insert into seal_queue (stream, place, previous, hash)
select 'ticket/' || ticket_number(ticket), entry, convert_from(canonical, 'UTF8')::json ->> 'previous', hash
from trail_entry order by ticket, entry;
do $$
begin
  perform append_site_record('accounts', 'account_record', to_jsonb(r), '{detail}') from (select * from account_record order by id) r;
  perform append_site_record('accounts', 'account', sealed_content(to_jsonb(r),
      'display_name zone failed_attempts locked_until session_version created_at'), '{password_hash}')
    from (select * from account order by id) r;
  perform append_site_record('accounts', 'api_token', sealed_content(to_jsonb(r), 'last_used'), '{name}')
    from (select * from api_token order by id) r;
  perform append_site_record('requesters', 'requester', to_jsonb(r), '{name,contact}') from (select * from requester order by id) r;
  perform append_site_record('cases', 'shop_case_record', to_jsonb(r), '{detail}') from (select * from shop_case_record order by id) r;
  perform append_site_record('cases', 'shop_case', to_jsonb(r), '{cause_words,observations,forecast,reason}')
    from (select * from shop_case order by id) r;
  perform append_site_record('catalogue', 'catalogue_version', to_jsonb(r), '{note,practice,figures,basis}')
    from (select * from catalogue_version order by number) r;
  perform append_site_record('knowledge', 'known_cause_change', to_jsonb(r), '{reason,before,after}')
    from (select * from known_cause_change order by id) r;
  perform append_site_record('limits', 'site_limit', to_jsonb(r)) from (select * from site_limit order by added, id) r;
  perform append_site_record('policy', 'site_version', to_jsonb(r), '{note}') from (select * from site_version order by number) r;
end $$;
insert into seal_queue (stream, hash) select 'files', file_hash(content) from attachment order by sha256;

create trigger seal_leaf_stays before update or delete on seal_leaf for each row execute function refuse_change();
create trigger seal_leaf_is_not_emptied before truncate on seal_leaf for each statement execute function refuse_change();
create trigger seal_node_stays before update or delete on seal_node for each row execute function refuse_change();
create trigger checkpoint_stays before update or delete on checkpoint for each row execute function refuse_change();
create trigger cosignature_stays before update or delete on cosignature for each row execute function refuse_change();
create trigger witness_event_stays before update or delete on witness_event for each row execute function refuse_change();
create trigger site_record_stays before update or delete on site_record for each row execute function refuse_change();
create trigger site_record_is_not_emptied before truncate on site_record for each statement execute function refuse_change();

grant select, insert, delete on seal_queue, disclosure to ${serverRole};
grant select, insert on seal_stuck, seal_leaf, seal_node, checkpoint, cosignature, witness_event, site_record to ${serverRole};
grant select on seal_head, stream_head, ticket_counter to ${serverRole};
grant update (size, frontier) on seal_head to ${serverRole};
grant update (place, hash) on stream_head to ${serverRole};
grant update (last) on ticket_counter to ${serverRole};
