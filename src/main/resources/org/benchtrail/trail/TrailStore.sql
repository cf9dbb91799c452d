-- The trail: entries are added and read, and nothing else.

-- @ append
insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash, words)
values (:ticket, :entry, :at, :actor, :kind, :canonical, :hash, cast(:words as bytea))

-- @ read
-- In one statement, so that nobody's act can fall between the row, the trail and what of it is sealed: a row for each ticket,
-- and one for each entry.
select t.serial as ticket, t.entries as expected, t.last_hash, s.place as sealed, encode(s.hash, 'hex') as sealed_hash,
  t.broken, h.holes, x.erased, cast(null as integer) as entry, cast(null as timestamptz) as at, null as actor, null as kind,
  cast(null as bytea) as canonical, null as hash, cast(null as bytea) as words
from ticket t
left join lateral (select place, hash from seal_leaf l where l.stream = 'ticket/' || ticket_number(t.serial)
  order by place desc limit 1) s on true
left join lateral (
-- a hole counts with the record of those who agreed, and not without it
  select string_agg(concat_ws(' ', m.first, m.last, m.hash, i.place), ',' order by m.first) as holes
  from mending m
  cross join lateral (select r.place from site_record r cross join lateral json_read(r.canonical) as j(read)
    where r.stream = 'incidents' and j.read ->> 'what' = 'mending'
      and (j.read -> 'content') @> jsonb_build_object('id', m.id, 'ticket', m.ticket, 'first', m.first, 'last', m.last, 'hash', m.hash,
        'way', 'GO_ON', 'outcome', 'AGREED')
    order by r.place desc limit 1) i
  where m.ticket = t.serial and m.outcome = 'AGREED' and m.way = 'GO_ON'
) h on true
left join lateral (
-- so do words that are missing, with the record of who decided it
  select string_agg(cast(w.entry as text), ',') as erased
  from erased_words w
  where w.ticket = t.serial and exists (select from site_record r cross join lateral json_read(r.canonical) as j(read)
    where r.stream = 'erasures' and j.read ->> 'what' = 'erased_words'
      and (j.read -> 'content') @> jsonb_build_object('id', w.id, 'ticket', w.ticket, 'entry', w.entry))
) x on true
where t.serial in (:tickets)
union all
select ticket, null, null, null, null, null, null, null, entry, at, actor, kind, canonical, hash, words
from trail_entry where ticket in (:tickets)

-- @ leaves
-- what the log has sealed of a ticket
select place, encode(hash, 'hex') as hash from seal_leaf where stream = 'ticket/' || ticket_number(cast(:ticket as integer)) order by place

-- @ put back
select cast(put_back_entry(cast(:ticket as integer), cast(:entry as integer), :canonical, cast(:words as bytea)) as text)

-- @ sealing waits
select cast(pg_advisory_xact_lock(7202) as text)

-- @ out of the queue
delete from seal_queue where stream = 'ticket/' || ticket_number(cast(:ticket as integer))

-- @ into the queue
-- in the order of the trail, whatever order they came back in
insert into seal_queue (stream, place, previous, hash)
select l.stream, e.entry, json_read(e.canonical) ->> 'previous', e.hash
from (select 'ticket/' || ticket_number(cast(:ticket as integer)) as stream) l
join trail_entry e on e.ticket = :ticket
where e.entry > coalesce((select max(place) from seal_leaf where stream = l.stream), 0)
order by e.entry

-- @ hole into the queue
-- What was never sealed gets its leaves all the same, so that no place of the stream is missing to whoever follows the log: the hash
-- of an entry where it is known, and of its own name where nobody knows it any more.
with gone as (
  delete from seal_queue where stream = 'ticket/' || ticket_number(cast(:ticket as integer)) returning place, hash
), sealed as (
  select place, encode(hash, 'hex') as hash from seal_leaf where stream = 'ticket/' || ticket_number(cast(:ticket as integer))
  order by place desc limit 1
), leaves as (
  select 'ticket/' || ticket_number(cast(:ticket as integer)) as stream, p.place, case
      when p.place = :last then cast(:hash as text)
      when p.place < :first then (select hash from trail_entry where ticket = :ticket and entry = p.place)
      else coalesce((select max(hash) from gone g where g.place = p.place),
        entry_hash(convert_to('hole ' || ticket_number(cast(:ticket as integer)) || ' ' || p.place, 'UTF8'))) end as hash
  from generate_series(coalesce((select place from sealed), 0) + 1, cast(:last as bigint)) as p(place)
)
insert into seal_queue (stream, place, previous, hash)
select stream, place, coalesce(lag(hash) over (order by place), (select hash from sealed), repeat('0', 64)), hash
from leaves order by place
