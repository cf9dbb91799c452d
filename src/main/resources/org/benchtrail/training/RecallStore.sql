-- Questions at the beginning of a shift, in the schema of their own; the rows of a policy are those of the person named first.

-- @ answer
insert into recall.answer (person, item, day, at, given, hit) values (:person, :item, :day, :at, :given, :hit)
on conflict (person, item, day) do nothing

-- @ answers
select item, day, given, hit from recall.answer where person = :person order by id

-- @ erase
delete from recall.answer where person = :person

-- @ end
insert into recall.day (person, day, at) values (:person, :day, :at) on conflict do nothing

-- @ ended
select exists (select from recall.day where person = :person and day = :day)

-- @ tickets
-- on which the person left a step or tried to, the latest first
select ticket from trail_entry
where actor = :person and kind in ('advanced', 'closed', 'refused')
group by ticket order by max(at) desc limit 40
