-- @ state
insert into audit_lot (id, begins, ends, state) values (:id, :begins, :ends, :state)

-- @ overlapping
select id from audit_lot where tstzrange(begins, ends) && tstzrange(cast(:begins as timestamptz), cast(:ends as timestamptz))

-- @ lock
select id from audit_lot where id = :id for update

-- @ unfinished
select id, state = 'STATED' as stated from audit_lot where state in ('STATED', 'FROZEN', 'SEEDED') and ends < :ended order by begins

-- @ lots
select id from audit_lot order by begins desc, id desc

-- @ concluded between
select id from audit_lot where state = 'CONCLUDED' and ends > :begins and ends <= :ends order by ends desc limit :most

-- @ acts
select place, at, by, what, cast(body as text) as body, remark from audit_act where lot = :lot order by place

-- @ append
insert into audit_act (lot, place, at, by, what, body, remark)
values (:lot, :place, :at, :by, :what, cast(:body as jsonb), :remark)

-- @ renew
update audit_lot set state = :state, to_give = :toGive, to_settle = :toSettle where id = :id

-- @ drop reviews
delete from audit_review where lot = :lot

-- @ add review
insert into audit_review (lot, ticket, turn, reviewer, signed) values (:lot, :ticket, :turn, :reviewer, :signed)

-- @ ask addendum
insert into audit_addendum (lot, ticket, requirement, asked_of, due) values (:lot, :ticket, :requirement, :askedOf, :due)

-- @ answer addenda
update audit_addendum set entry = :entry where (lot, ticket, requirement) in (
  select lot, ticket, requirement from audit_addendum
  where ticket = :ticket and entry is null and not closed and asked_of = :by and requirement = :requirement
  order by due, lot limit 1)
and entry is null and not closed

-- @ close addendum
update audit_addendum set closed = true
where lot = :lot and ticket = :ticket and requirement = :requirement and entry is null and not closed

-- @ addenda
select ticket, requirement, asked_of, due, entry, closed from audit_addendum where lot = :lot order by due, ticket, requirement

-- @ wanted
select a.requirement, a.ticket, a.due, w.at as written, exists (
    select from trail_entry c where c.ticket = a.ticket and c.kind = 'addendum-countersigned'
      and cast(convert_from(c.canonical, 'UTF8') as jsonb) -> 'payload' ->> 'addendum' = cast(a.entry as text)) as countersigned
from audit_addendum a join audit_lot l on l.id = a.lot left join trail_entry w on w.ticket = a.ticket and w.entry = a.entry
where l.ends > :begins and l.ends <= :ends
order by a.ticket, a.requirement

-- @ judges
select distinct reviewer from audit_review where ticket = :ticket

-- @ accepted by
select distinct accepted_by from shop_case where ticket = :ticket and accepted_by is not null

-- @ ended
select distinct on (ticket) ticket, entry, hash, exists (select from alarm a where a.ticket = e.ticket and not a.holds) as incident
from trail_entry e
where kind in ('closed', 'cancelled') and at >= :begins and at < :ends
-- who cancels a ticket that was closed in the same period does not take its closing out of the lot
order by ticket, (kind = 'closed') desc, entry desc

-- @ before
select g.since, (select count(distinct ticket) from trail_entry
    where kind in ('closed', 'cancelled') and at >= coalesce(g.since, '-infinity') and at < :begins) as tickets
from (select max(ends) as since from audit_lot where ends <= :begins) g

-- @ last end
select ends from audit_lot order by ends desc limit 1

-- @ holders
select distinct r.lot, r.reviewer from audit_review r join audit_lot l on l.id = r.lot where not r.signed and l.state = 'DRAWN'

-- @ open
-- those that are open still, and those that ended since: two short lists, each by its index
select count(*) as tickets, min(opened) as oldest from (
  select opened from ticket where standing = 'OPEN' and opened < :ends
  union all
  select opened from ticket where standing <> 'OPEN' and opened < :ends and ended >= :ends
    and serial in (select ticket from trail_entry where kind in ('closed', 'cancelled') and at >= :ends)
) t

-- @ reviews waiting
select (select count(*) from audit_review r join audit_lot l on l.id = r.lot
    where r.reviewer = :account and not r.signed and l.state = 'DRAWN') as own,
  coalesce(sum(to_give), 0) as to_give, coalesce(sum(to_settle), 0) as to_settle
from audit_lot where state = 'DRAWN'

-- @ addenda waiting
select count(*) from audit_addendum where asked_of = :account and entry is null and not closed

-- @ reviewed lots of
select distinct r.lot, r.ticket from audit_review r join ticket t on t.serial = r.ticket
where r.turn = 1 and r.signed and (t.assignee = :account
  or exists (select from trail_entry e where e.ticket = r.ticket and e.actor = :account))
order by r.lot desc, r.ticket

-- @ add signals
insert into audit_signal (lot, ticket, kind, detail)
select :lot, ticket, kind, detail
from unnest(cast(:tickets as integer[]), cast(:kinds as text[]), cast(:details as text[])) as s(ticket, kind, detail)

-- @ signals
select ticket, kind, detail from audit_signal where lot = :lot order by kind, ticket

-- @ measure
insert into audit_signal_worth (lot, kind, hits, marked, base_hits, base) values (:lot, :kind, :hits, :marked, :baseHits, :base)

-- @ worth
select kind, cast(sum(hits) as bigint) as hits, cast(sum(marked) as bigint) as marked,
  cast(sum(base_hits) as bigint) as base_hits, cast(sum(base) as bigint) as base
from audit_signal_worth
where lot in (select id from audit_lot where state = 'CONCLUDED' order by ends desc limit :lots)
group by kind

-- @ switched off
select kind from (
  select distinct on (body ->> 'signal') body ->> 'signal' as kind, body ->> 'shown' as shown
  from audit_act where what = 'signal-switched' order by body ->> 'signal', id desc) s
where shown = 'false'

-- @ not accepted
select c.lot from audit_act c
where c.what = 'lot-concluded' and c.body ->> 'accepted' = 'false'
  and not exists (select from audit_act p where p.what = 'plan-stated' and p.id > c.id)
order by c.lot
