-- Words that somebody wrote into an entry stand beside it, and what is hashed holds commitments to them, so that they can be erased.
alter table trail_entry add column words bytea;
alter table practice_entry add column words bytea;

create table erased_words (
  id          bigint generated always as identity primary key,
  ticket      integer     not null references ticket,
  entry       integer     not null,
  -- what the entry holds in place of the words
  commitments jsonb       not null,
  reason      text        not null,
  decided_by  text        not null,
  at          timestamptz not null,
  unique (ticket, entry)
);
create trigger erased_words_stay before update or delete on erased_words for each row execute function refuse_change();
create trigger erased_words_are_not_emptied before truncate on erased_words for each statement execute function refuse_change();
create constraint trigger erased_words_are_sealed after insert on erased_words
  deferrable initially deferred for each row execute function seal_row('erasures', '', '');
grant select on erased_words to ${serverRole};

create function commitments(canonical bytea) returns jsonb language sql immutable strict parallel safe as $$
  select coalesce(jsonb_agg(distinct c), '[]') from jsonb_path_query(json_read(canonical) -> 'payload', 'lax $.**.committed') c
$$;

create function refuse_other_words(of_ticket integer, place integer, bytes bytea, written bytea) returns void
language plpgsql stable as $$
declare
  erased boolean := exists (select from erased_words w where w.ticket = of_ticket and w.entry = place);
begin
  if written is not null and erased then
    raise exception 'the words of entry % were erased', place using errcode = 'integrity_constraint_violation';
  end if;
  if written is null and not erased and commitments(bytes) <> '[]' then
    raise exception 'the words of entry % are missing', place using errcode = 'integrity_constraint_violation';
  end if;
end $$;

create function require_words() returns trigger language plpgsql as $$
begin
  perform refuse_other_words(new.ticket, new.entry, new.canonical, new.words);
  return new;
end $$;
create trigger trail_entry_has_words before insert or update on trail_entry for each row execute function require_words();

-- Erases the words of entries; the server's account may change no entry, but may call this. Answers with how many it were.
create function erase_words(of_ticket integer, places integer[], why text, deciders text, moment timestamptz) returns integer
language plpgsql security definer set search_path to public, pg_temp set timezone to 'UTC' as $$
declare
  erased integer;
begin
  insert into erased_words (ticket, entry, commitments, reason, decided_by, at)
  select e.ticket, e.entry, commitments(e.canonical), why, deciders, moment
  from trail_entry e where e.ticket = of_ticket and e.entry = any(places) and e.words is not null
  order by e.entry;
  get diagnostics erased = row_count;
  update trail_entry set words = null where ticket = of_ticket and entry = any(places) and words is not null;
  -- at once, so that the trail holds within the transaction
  set constraints erased_words_are_sealed immediate;
  return erased;
end $$;
revoke execute on function erase_words(integer, integer[], text, text, timestamptz) from public;
grant execute on function erase_words(integer, integer[], text, text, timestamptz) to ${serverRole};

drop function put_back_entry(integer, integer, bytea);
create function put_back_entry(of_ticket integer, place integer, bytes bytea, written bytea) returns void
language plpgsql security definer set search_path to public, pg_temp as $$
declare
  told jsonb := json_read(bytes);
begin
  if not exists (select from mending m where m.ticket = of_ticket and m.way = 'PUT_BACK' and m.outcome = 'AGREED') then
    raise exception 'nobody agreed to put entries of ticket % back', of_ticket using errcode = 'insufficient_privilege';
  end if;
  insert into trail_entry as e (ticket, entry, at, actor, kind, canonical, hash, words)
  values (of_ticket, place, (told ->> 'at')::timestamptz, told ->> 'actor', told #>> '{payload,kind}', bytes, entry_hash(bytes), written)
  on conflict (ticket, entry) do update
    set at = excluded.at, actor = excluded.actor, kind = excluded.kind, canonical = excluded.canonical, hash = excluded.hash,
      words = excluded.words;
end $$;
revoke execute on function put_back_entry(integer, integer, bytea, bytea) from public;
grant execute on function put_back_entry(integer, integer, bytea, bytea) to ${serverRole};

-- Words that were erased are taken from what helps to spell a search, and from answers that are kept for a repeated request.
grant delete on ticket_word, knowledge_word to ${serverRole};
