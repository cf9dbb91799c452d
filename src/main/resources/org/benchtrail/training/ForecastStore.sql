-- Forecasts, in the schema of their own; the rows of a policy are those of the person named first.

-- @ whose
select set_config('forecast.person', :person, true)

-- @ keep
insert into forecast.content (ticket, entry, person, round, kind, made, value, salt, reference)
values (:ticket, :entry, :person, :round, :kind, :made, :value, :salt, :reference)

-- @ saw
insert into forecast.seen (ticket, person, at) values (:ticket, :person, :at) on conflict do nothing
