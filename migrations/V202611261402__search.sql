-- What the search asks: every word that a ticket has, for finding what was mistyped; every device that a ticket named; who reported.

create table ticket_word (
  word text primary key
);
create index ticket_word_alike on ticket_word using gin (word gin_trgm_ops) with (fastupdate = off);
create index ticket_word_beginning on ticket_word (word text_pattern_ops);

create table ticket_device (
  label text primary key
);
create index ticket_device_words on ticket_device using gin (to_tsvector('simple', label));
-- by distance, so that the nearest few are read and no more
create index ticket_device_alike on ticket_device using gist (lower(label) gist_trgm_ops);

create index requester_words on requester using gin (to_tsvector('simple', name));
create index ticket_of_requester on ticket (requester, serial);

-- In one order, so that two tickets with the same new words wait for each other in one direction only.
create function keep_ticket_words() returns trigger language plpgsql as $$
begin
  insert into ticket_word
    select word from unnest(tsvector_to_array(new.search)) word
    where length(word) between 3 and 40 and word ~ '[[:alpha:]]' order by word
    on conflict do nothing;
  insert into ticket_device values (new.device) on conflict do nothing;
  return null;
end $$;
create trigger ticket_words_of_new after insert on ticket for each row execute function keep_ticket_words();
create trigger ticket_words_of_changed after update of words, device on ticket for each row
  when (old.words is distinct from new.words or old.device is distinct from new.device) execute function keep_ticket_words();

insert into ticket_word
  select distinct word from ticket, unnest(tsvector_to_array(search)) word
  where length(word) between 3 and 40 and word ~ '[[:alpha:]]';
insert into ticket_device select distinct device from ticket;

grant select, insert on ticket_word to ${serverRole};
grant select, insert on ticket_device to ${serverRole};
