-- Forecasts, in the schema of their own; the rows of a policy are those of the person named first.

-- @ keep
insert into forecast.content (ticket, entry, person, round, kind, made, value, salt, reference)
values (:ticket, :entry, :person, :round, :kind, :made, :value, :salt, :reference)

-- @ of
select c.ticket, c.entry, c.round, c.kind, c.made, c.value, c.reference,
  exists (select from forecast.seen s where s.ticket = c.ticket and s.person = c.person and s.at < c.made) as seen
from forecast.content c where c.person = :person order by c.made desc, c.entry desc

-- @ latest
select value from forecast.content where person = :person and ticket = :ticket and kind in ('CAUSES_EARLY', 'CAUSES')
order by entry desc limit 1

-- @ erase
delete from forecast.content where person = :person and ticket = :ticket and entry = :entry

-- @ erased
insert into forecast_erasure (ticket, entry, at) values (:ticket, :entry, :at)

-- @ skip
insert into forecast.skipped (ticket, entry, person, at) values (:ticket, :entry, :person, :at)

-- @ skips
select count(*) from forecast.skipped where person = :person

-- @ read
insert into forecast.reading (person, reader, at) values (:person, :reader, :at)

-- @ readings
select reader, at from forecast.reading where person = :person order by id desc limit 20

-- @ saw
insert into forecast.seen (ticket, person, at) values (:ticket, :person, :at) on conflict do nothing
