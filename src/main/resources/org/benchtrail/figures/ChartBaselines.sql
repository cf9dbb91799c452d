-- Limits that were frozen, of one filter.

-- @ frozen
select begins, ends, points, outside, centre, spread, rules, reason, frozen_by, frozen_at from chart_baseline
where chart = :chart and category is not distinct from cast(:category as text) and place = :place
order by id

-- @ freeze
insert into chart_baseline (chart, category, place, begins, ends, points, outside, centre, spread, rules, reason, frozen_by, frozen_at)
values (:chart, cast(:category as text), :place, :begins, :ends, :points, :outside, :centre, :spread, :rules, :reason, :by, :at)
