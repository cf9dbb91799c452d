-- What waits, and for whom.

-- @ renew
with gone as (
  delete from ticket_wait where ticket = :ticket
), known as (
  delete from ticket_wait_owed where ticket = :ticket
)
insert into ticket_wait (ticket, kind, entry, account, supervisors, mentors, hands, asker, since, due)
select :ticket, w.kind, w.entry, w.account, w.supervisors, w.mentors, cast(:hands as text[]), w.asker, w.since, w.due
from jsonb_to_recordset(cast(:waits as jsonb)) as w (
  kind text, entry integer, account text, supervisors boolean, mentors boolean, asker text, since timestamptz, due timestamptz
)

-- @ owed
select ticket from ticket_wait_owed order by ticket limit 100

-- @ waiting
-- Whoever had a hand in the work judges nothing of it. Accounts are one's own and those for whom one stands in.
select w.ticket, w.kind, w.entry, w.account, w.asker, w.since, w.due, t.title, t.device, t.place
from (
  select * from ticket_wait where account = any(cast(:account as text) || array(select stands_in_for(:account, :now))) and due <= :now
  union
  select * from ticket_wait where supervisors and :supervisor and due <= :now and :account <> all (hands)
  union
  select * from ticket_wait where mentors and :mentor and due <= :now and :account <> all (hands)
) w
join ticket t on t.serial = w.ticket
order by w.due, w.ticket, w.entry
limit :most

-- @ count
select count(*)
from (
  select id from ticket_wait where account = any(cast(:account as text) || array(select stands_in_for(:account, :now))) and due <= :now
  union
  select id from ticket_wait where supervisors and :supervisor and due <= :now and :account <> all (hands)
  union
  select id from ticket_wait where mentors and :mentor and due <= :now and :account <> all (hands)
) w

-- @ asked
select w.ticket, w.kind, w.entry, w.account, w.asker, w.since, w.due, t.title, t.device, t.place
from ticket_wait w
join ticket t on t.serial = w.ticket
where w.asker = :account and w.account is distinct from :account and w.due <= :now
order by w.since, w.ticket, w.entry
limit :most
