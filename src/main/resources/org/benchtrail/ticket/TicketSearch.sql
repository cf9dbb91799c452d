-- Tickets by words, whatever their state; the newest first.

-- @ words
-- Of words that few tickets have, all of them by the index. With more, that many and whatever has them of the newest: to sort all that
-- have a common word would be to read hundreds of thousands of rows.
with asked as materialized (
  select to_tsquery('simple', :words) as query
), common as materialized (
  select count(*) >= :often as known from (select search from ticket order by serial desc limit 500) newest
  where search @@ (select query from asked)
), gathered as materialized (
  select serial from ticket where not (select known from common) and search @@ (select query from asked) limit :gathered
), near as (
  select serial from gathered
  union all
  select serial from (select serial, search from ticket order by serial desc limit 4000) newest
  where ((select known from common) or (select count(*) from gathered) = :gathered)
    and search @@ (select query from asked)
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
