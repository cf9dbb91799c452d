-- The supervisor's audit: every act of a lot is an entry of the lot's own stream, appended and sealed. Beside the acts stand images
-- that lists need, which can be made anew from them.

create table audit_lot (
  id          text primary key check (id ~ '^[0-9]{4}-(0[1-9]|1[0-2])[a-z]?$'),
  begins      timestamptz not null,
  ends        timestamptz not null check (ends > begins),
  state       text not null,
  -- reviews that are to be given, and differences that are to be settled
  to_give     integer not null default 0,
  to_settle   integer not null default 0,
  -- a ticket that ended is in one lot only
  exclude using gist (tstzrange(begins, ends) with &&)
);

create table audit_act (
  id     bigint generated always as identity primary key,
  lot    text not null references audit_lot,
  place  bigint not null check (place >= 1),
  at     timestamptz not null,
  by     text not null,
  what   text not null,
  body   jsonb not null,
  remark text not null,
  unique (lot, place)
);
create trigger audit_act_stays before update or delete on audit_act for each row execute function refuse_change();
create trigger audit_act_is_not_emptied before truncate on audit_act for each statement execute function refuse_change();
-- What makes a lot the lot it is happens once, whatever door it comes through.
create unique index audit_act_once on audit_act (lot, what)
  where what in ('plan-stated', 'lot-frozen', 'seed-drawn', 'sample-drawn', 'lot-concluded');

-- A stream for each lot.
create function seal_audit_act() returns trigger language plpgsql set timezone to 'UTC' set bytea_output to 'hex' as $$
begin
  insert into stream_head (stream, place, hash) values ('audit/' || new.lot, 0, repeat('0', 64)) on conflict (stream) do nothing;
  perform append_site_record('audit/' || new.lot, tg_table_name, to_jsonb(new), '{remark}');
  return null;
end $$;
create constraint trigger audit_act_is_sealed after insert on audit_act
  deferrable initially deferred for each row execute function seal_audit_act();

create table audit_review (
  lot      text not null references audit_lot,
  ticket   integer not null,
  turn     smallint not null check (turn in (1, 2)),
  reviewer text not null,
  signed   boolean not null default false,
  primary key (lot, ticket, turn)
);
create index audit_review_of on audit_review (reviewer, ticket);
create index audit_review_of_ticket on audit_review (ticket);

-- What was asked of who did the work, until it is written.
create table audit_addendum (
  lot         text not null references audit_lot,
  ticket      integer not null,
  requirement text not null,
  asked_of    text not null,
  due         timestamptz not null,
  -- the entry of the ticket that answers; null until there is one
  entry       integer,
  primary key (lot, ticket, requirement)
);
create index audit_addendum_of on audit_addendum (asked_of) where entry is null;
create index audit_addendum_on on audit_addendum (ticket);

create index trail_entry_ended on trail_entry (at) where kind in ('closed', 'cancelled');

-- As before, over all streams whose name fits: one of the site, or those of all lots.
create or replace function rows_unlike_records(of_stream text, of_table text, key text) returns table (row_key text, fault text)
language plpgsql stable set timezone to 'UTC' set bytea_output to 'hex' as $$
begin
  return query execute format($query$
    with records as (
      select distinct on (s.j -> 'content' ->> %1$L) s.j -> 'content' ->> %1$L as k, s.j -> 'content' as content, s.stream, s.place
      from (select r.stream, r.place, convert_from(r.canonical, 'UTF8')::jsonb as j from site_record r where r.stream like %2$L) s
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
            where d.stream = r.stream and d.place = r.place and d.name = e.key),
          p.row_now -> e.key, 'null'))
        from jsonb_object_keys(r.content) as e(key)))
    order by 1
    limit 20
  $query$, key, of_stream, of_table);
end $$;

grant select, insert on audit_act to ${serverRole};
grant select, insert, update on audit_lot, audit_addendum to ${serverRole};
grant select, insert, update, delete on audit_review to ${serverRole};
grant insert on stream_head to ${serverRole};
