-- What left the house is recorded in the log: which file, to whom, and of which ticket if it is one ticket's.
alter table export_given add column ticket integer references ticket;
create index export_given_of_ticket on export_given (ticket, id) where ticket is not null;
insert into stream_head (stream, place, hash) values ('audit/exports', 0, repeat('0', 64));
create trigger export_given_stays before update or delete on export_given for each row execute function refuse_change();
create trigger export_given_is_not_emptied before truncate on export_given for each statement execute function refuse_change();
create constraint trigger export_given_is_sealed after insert on export_given
  deferrable initially deferred for each row execute function seal_row('audit/exports', '', '');

-- What is there already is recorded now.
set local timezone to 'UTC';
do $$
begin
  perform append_site_record('audit/exports', 'export_given', to_jsonb(r)) from (select * from export_given order by id) r;
end $$;
