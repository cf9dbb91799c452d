-- Tickets for figures. Who works on them is asked for only to find the team, and told nowhere. The kinds are those of MoveKinds, written out as in
-- the index that holds only them.

-- @ opened
select t.serial, t.category, t.place, t.opened, t.due, t.ended, t.standing, t.assignee, k.category || '/' || k.cause_id as cause,
  m.moves, m.holds
from (
  select serial, category, place, opened, due, ended, standing, assignee from ticket
  where opened >= :begins and opened < :ends
  {and}
  order by opened desc limit :most
) t
left join closed_case k on k.serial = t.serial and not k.reopened and k.cause_id is not null
{put moves}

-- @ closed
select t.serial, t.closed, t.opened, m.moves, m.holds
from (
  select ticket.serial, c.at as closed, ticket.opened from trail_entry c join ticket on ticket.serial = c.ticket
  where c.kind = 'closed' and c.at >= :begins and c.at < :ends
  {and}
  order by c.at desc limit :most
) t
{put moves}

-- @ moves
left join lateral (
  select string_agg(e.kind || ' ' || cast(extract(epoch from e.at) * 1000000 as bigint), ',' order by e.entry) as moves,
    case when bool_or(e.kind = 'held') then (
      select string_agg((h.j -> 'payload' ->> 'waitingFor') || ' ' || (h.j -> 'payload' ->> 'followUp'), ',' order by h.entry)
      from (select w.entry, cast(convert_from(w.canonical, 'UTF8') as jsonb) as j from trail_entry w
        where w.ticket = t.serial and w.kind = 'held') h) end as holds
  from trail_entry e
  where e.ticket = t.serial
    and e.kind in ('advanced', 'ruled-out', 'rethought', 'verify-failed', 'closed', 'cancelled', 'reopened', 'held', 'resumed')
) m on true

-- @ of the category
ticket.category = :category

-- @ at the place
lower(place) = :place

-- @ of the team
ticket.assignee in (:members)

-- @ of the cause
exists (select from closed_case k where k.serial = ticket.serial and k.category = :causeCategory and k.cause_id in (:causeIds)
  and not k.reopened)

-- @ causes
select distinct category || '/' || cause_id as cause from closed_case
where closed >= :begins and closed < :ends and not reopened and cause_id is not null

-- @ titles
select serial, title from ticket where serial in (:serials) order by serial
