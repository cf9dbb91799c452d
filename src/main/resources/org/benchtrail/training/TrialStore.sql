-- Tests of the coach: what was stated, who takes part, and what they came to.

-- @ state
insert into coach_trial (stated_by, stated_at, question, margin, expected, correlation, occasions, people, jobs_each, order_seed,
  devices, stop_rule, left_out, analysis)
values (:by, :at, :question, :margin, :expected, :correlation, :occasions, :people, :jobsEach, :orderSeed, :devices, :stopRule,
  :leftOut, :analysis)
returning id

-- @ keepSeed
insert into coach_trial_seed (trial, secret, salt) values (:trial, :secret, :salt)

-- @ trials
select t.id, t.stated_by, t.stated_at, t.question, t.margin, t.expected, t.correlation, t.occasions, t.people, t.jobs_each,
  t.order_seed, t.devices, t.stop_rule, t.left_out, t.analysis, r.at as ended, r.difference, r.upper, r.not_worse,
  case when r.trial is null then null else s.secret end as secret, case when r.trial is null then null else s.salt end as salt
from coach_trial t
join coach_trial_seed s on s.trial = t.id
left join coach_trial_result r on r.trial = t.id
order by t.id desc
limit 50

-- @ lock
select cast(pg_advisory_xact_lock(7301) as text)

-- @ secret
select secret from coach_trial_seed where trial = :trial

-- @ agree
insert into coach_trial_turn (trial, person, place, family, coached, agreed)
values (:trial, :person, :place, :family, :coached, :at)

-- @ turns
select t.trial, t.person, t.place, t.family, t.coached, j.attempt, j.job, p.ended
from coach_trial_turn t
left join coach_trial_job j on j.trial = t.trial and j.person = t.person and j.place = t.place and not j.broken
left join practice_job p on p.id = j.job
where cast(:person as text) is null or t.person = :person
order by t.trial, t.person, t.place

-- @ attempts
select count(*) from coach_trial_job where trial = :trial and person = :person and place = :place

-- @ begin
insert into coach_trial_job (trial, person, place, attempt, job) values (:trial, :person, :place, :attempt, :job)

-- @ break
update coach_trial_job set broken = true where job = :job and person = :person

-- @ broken
select trial, count(*) as jobs from coach_trial_job where broken group by trial

-- @ conclude
insert into coach_trial_result (trial, at, people, difference, error, upper, not_worse)
values (:trial, :at, :people, :difference, :error, :upper, :notWorse)
on conflict (trial) do nothing

-- @ practised
select distinct family from practice_job where person = :person
