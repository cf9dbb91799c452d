-- Lists of tickets. Never the whole row: its words may be long.

-- @ page
select serial, title, category, device, place, priority, step, standing, round, assignee, opened, due, due_what, hold_for, follow_up, clock_stopped,
  escalated, entries as version, touched
from ticket
where serial in (
  select serial from ticket
  where standing = :standing
  {and}
  order by {order}
  limit :most
)
order by {order}

-- @ total
select count(*)
from ticket
where standing = :standing
{and}

-- @ counted
-- In the order of an index, so that the one of words is not asked for all that have a common word; that order is of no use where
-- few have them.
select count(*) from (
  select from ticket
  where standing = :standing
  {and}
  {order}
  limit :most
) fit

-- @ numbered
select serial from ticket where serial in (:serials)

-- @ after
{after}

-- @ at the step
step = :step

-- @ of the assignee
assignee = :assignee

-- @ of nobody
assignee is null

-- @ at the place
lower(place) = :place

-- @ held
follow_up is not null

-- @ not held
follow_up is null

-- @ of the category
category = :category

-- @ on the device
device = :device

-- @ due from
due >= :dueFrom

-- @ due before
due < :dueBefore

-- @ waiting for somebody
serial in (
  select ticket from ticket_wait where supervisors
  union all
  select ticket from ticket_wait where mentors
  union all
  select ticket from ticket_wait where kind = 'OFFER'
)

-- @ with the words
search @@ to_tsquery('simple', :words)

-- @ common
-- Of the newest.
select count(*) from (select search from ticket order by serial desc limit 500) newest
where search @@ (select to_tsquery('simple', :words))

-- @ fitting
-- Of words that few tickets have, by the index: that they are few is not known before, so the query is hidden from whoever guesses.
select serial, standing from ticket where search @@ (select to_tsquery('simple', :words)) limit :most

-- @ among
serial = any(:serials)

-- @ alike
-- The newest are looked at one by one, and tell how often each word is. Among all others the index is asked for the words that few
-- tickets have, the most seldom first, and for those that have two of the next ones; for a common word it would have to gather
-- hundreds of thousands of rows only to rank them. What it finds is cut off, for words may be less seldom than the newest tell.
-- "+ 0" keeps the index of numbers out: it would be gone through from end to end.
with newest as materialized (
  select serial, search from ticket where standing <> 'CANCELLED' order by serial desc limit 2000
), word as materialized (
  select word, to_tsquery('simple', word) as query from unnest(cast(:words as text[])) word
), counted as materialized (
  select word, (select count(*) from newest where search @@ query) as newest_with from word
), expected as materialized (
  select word, newest_with, row_number() over seldom_first as place,
    sum(newest_with + 1) over seldom_first * (select max(serial) from newest) / 2000 <= :few as few
  from counted
  window seldom_first as (order by newest_with, word)
), asked as materialized (
  select to_tsquery('simple', string_agg(word, ' | ')) as every,
    to_tsquery('simple', concat_ws(' | ', string_agg(word, ' | ') filter (where few), (
      select string_agg(a.word || ' & ' || b.word, ' | ') from expected a join expected b on a.place < b.place
      where not a.few and b.place <= 4 and b.newest_with < 40
    ))) as rare
  from expected
), near as (
  select serial, search from newest where search @@ (select every from asked)
  union all
  (
    select serial, search from ticket
    where search @@ (select rare from asked) and standing <> 'CANCELLED' and serial + 0 < (select min(serial) from newest)
    limit :few
  )
), ranked as (
  select serial, ts_rank(search, (select every from asked)) as rank from near where serial <> :except
)
select serial, title, category, device, place, priority, step, standing, round, assignee, opened, due, due_what, hold_for, follow_up, clock_stopped,
  escalated, entries as version, touched
from ticket
join (select serial, rank from ranked where rank > 0.05 order by rank desc, serial desc limit 5) likest using (serial)
order by rank desc, serial desc

-- @ of the device
select serial from ticket
where device = :device and place = :place and serial <> :except
order by serial desc limit 3

-- @ places
-- Each place is looked up after the one before, so that a place with many tickets costs no more than one with few.
with recursive known as (
  (select place as name from ticket order by place limit 1)
  union all
  select (select place from ticket where place > name order by place limit 1) from known where name is not null
)
select name from known where name is not null limit 200

-- @ devices
with recursive known as (
  (select device as name from ticket order by device limit 1)
  union all
  select (select device from ticket where device > name order by device limit 1) from known where name is not null
)
select name from known where name is not null limit 200

-- @ contacts
select contact from requester where name = :name order by contact limit 2

-- @ reporters
select distinct r.name from ticket t join requester r on r.id = t.requester where lower(t.device) = :device and r.erased is null limit 2
