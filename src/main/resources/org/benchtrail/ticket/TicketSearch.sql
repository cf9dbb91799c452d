-- Tickets by words, whatever their state; the newest first.

-- @ words
-- The newest are looked at one by one; the index is asked only for words that are rare among them, and the whole query is hidden from
-- it by coalesce: for a common word it would have to gather hundreds of thousands of rows before it could drop nearly all of them.
with asked as materialized (
  select to_tsquery('simple', string_agg(word, :joined)) as every from unnest(cast(:words as text[])) word
), newest as materialized (
  select serial, search from ticket order by serial desc limit 4000
), counted as (
  select word, (select count(*) from newest where search @@ to_tsquery('simple', word)) as newest_with
  from unnest(cast(:words as text[])) word
), rare as materialized (
  select case when :joined = ' & '
      then to_tsquery('simple', string_agg(word, ' & ') filter (where newest_with < 40))
      else case when max(newest_with) < 40 then to_tsquery('simple', string_agg(word, ' | ')) end
    end as query
  from counted
), near as (
  select serial from newest where search @@ (select every from asked)
  union all
  (select serial from ticket
  where search @@ (select coalesce(query, cast('' as tsquery)) from rare)
    and coalesce(search, '') @@ (select every from asked)
    and serial < (select min(serial) from newest)
  order by serial desc limit :most)
)
select serial, title, category, device, place, priority, step, standing, round, assignee, opened, due, due_what, hold_for, follow_up, clock_stopped,
  escalated, entries as version, touched
from ticket
where serial in (select serial from near order by serial desc limit :most)
order by serial desc

-- @ spelling
select asked as word, coalesce(near, '') as near
from unnest(cast(:words as text[])) with ordinality given (asked, place)
left join lateral (
  select word as near from ticket_word where word % asked order by similarity(word, asked) desc, word limit 1
) likest on not exists (select from ticket_word where word ~>=~ asked and word ~<~ (asked || chr(1114111)))
order by place

-- @ devices
select label,
  (select count(*) from (select from ticket where device = label and standing = 'OPEN' limit 100) o) as open,
  (select count(*) from (select from ticket where device = label and standing = 'CLOSED' limit 100) c) as closed
from (
  select label from ticket_device where to_tsvector('simple', label) @@ to_tsquery('simple', :words)
  union
  select label from (select label from ticket_device order by lower(label) <-> :typed limit 5) nearest
  where similarity(lower(label), :typed) > 0.3
) fit
order by similarity(lower(label), :typed) desc, label
limit 6

-- @ requesters
select serial, title, category, device, place, priority, step, standing, round, assignee, opened, due, due_what, hold_for, follow_up, clock_stopped,
  escalated, entries as version, touched
from ticket
where serial in (
  select latest.serial
  from (
    select id from requester where to_tsvector('simple', name) @@ to_tsquery('simple', :words) and erased is null
    order by id desc limit 50
  ) who,
  lateral (select serial from ticket where requester = who.id order by serial desc limit 6) latest
)
order by serial desc
limit 6
