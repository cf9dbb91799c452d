-- What a leaf of the stream 'files' is the hash of, found by that hash.
create table file_record (
  hash      text primary key,
  canonical bytea not null
);
create function file_canonical(content bytea) returns bytea language sql immutable strict parallel safe as $$
  select convert_to(canonical_json(jsonb_build_object('bytes', length(content), 'sha256', encode(sha256(content), 'hex'))), 'UTF8')
$$;
create or replace function seal_file() returns trigger language plpgsql as $$
declare
  bytes bytea := file_canonical(new.content);
  hashed text := encode(sha256('\x00'::bytea || bytes), 'hex');
begin
  insert into file_record (hash, canonical) values (hashed, bytes) on conflict do nothing;
  insert into seal_queue (stream, hash) values ('files', hashed);
  return null;
end $$;
insert into file_record (hash, canonical) select file_hash(content), file_canonical(content) from attachment on conflict do nothing;
drop function file_hash(bytea);
create trigger file_record_stays before update or delete on file_record for each row execute function refuse_change();
grant select, insert on file_record to ${serverRole};
