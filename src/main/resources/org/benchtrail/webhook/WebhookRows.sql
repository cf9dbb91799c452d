-- @ claim
-- who is named for the first time is told of what happens from now on
insert into webhook as w (name, next, not_before)
select :name, h.size, :until from seal_head h
on conflict (name) do update set not_before = excluded.not_before where w.not_before <= :now
returning w.name, w.next, w.failures

-- @ told
update webhook
set next = :next, not_before = :notBefore, failures = :failures, answered = :at, answer = :answer
where name = :name

-- @ freed
update webhook set next = :next, not_before = :notBefore where name = :name

-- @ all
select w.name, w.next, w.not_before, w.failures, w.answered, w.answer,
       (select h.size from seal_head h) as size
from webhook w
order by w.name
