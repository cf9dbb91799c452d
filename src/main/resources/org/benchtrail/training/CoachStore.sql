-- What people chose to be shown, in the schema of their own; the rows of a policy are those of the person named first. And what is
-- recorded of their work elsewhere.

-- @ choose
insert into coach.choice (person, code, level, at) values (:person, :code, cast(:level as text), :at)

-- @ choices
select code, level, at from coach.choice where person = :person order by id

-- @ work
-- of each ticket on which the person left a step or tried to
select e.ticket, e.entry, e.at, e.actor, e.kind, e.canonical, e.hash, e.words
from trail_entry e
where e.kind in (:kinds)
  and e.ticket in (
    select o.ticket from trail_entry o where o.actor = :person and o.kind in ('advanced', 'closed', 'refused'))
order by e.ticket, e.entry

-- @ bound
-- of the plan that came to an end last
select not_worse from coach_trial_result order by at desc, trial desc limit 1

-- @ heads
-- the last entry of each of those trails
select distinct on (e.ticket) e.ticket, e.entry, e.hash
from trail_entry e
where e.ticket in (:tickets)
order by e.ticket, e.entry desc
