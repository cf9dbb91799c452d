-- What was found of the records of tickets: lines are added and read, and nothing else.

-- @ add
-- A line is left out if the last one of the ticket says the same and is not old.
insert into alarm (ticket, at, holds, sentence, detail, seen_by)
select cast(:ticket as integer), cast(:at as timestamptz), cast(:holds as boolean), :sentence, :detail, :by
where not exists (
  select from (select holds, sentence, at from alarm where ticket = :ticket order by id desc limit 1) last
  where last.holds = :holds and last.sentence = :sentence and last.at > cast(:since as timestamptz))

-- @ standing
select ticket
from (select distinct on (ticket) ticket, holds from alarm order by ticket, id desc) last
where not holds
order by ticket

-- @ newest
select ticket, at, holds, sentence, detail, seen_by
from alarm
order by id desc
limit 200
