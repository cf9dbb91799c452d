-- Practice jobs, in the schema of their own.

-- @ begin
insert into practice_job (person, family, begun, morning, commitment)
values (:person, :family, :begun, :morning, :commitment)
returning id

-- @ keepTruth
insert into practice_truth (job, seed, fault, salt, own, version) values (:job, :seed, :fault, :salt, :own, :version)

-- @ append
insert into practice_entry (job, entry, at, actor, kind, canonical, hash, words, recorded)
values (:job, :entry, :at, :actor, :kind, :canonical, :hash, cast(:words as bytea), :recorded)

-- @ act
insert into practice_act (job, place, act, entry, step) values (:job, :place, :act, :entry, :step)

-- @ end
update practice_job set state = :state, ended = :ended where id = :job

-- @ lock
select id from practice_job where id = :job for update

-- @ job
select j.id, j.person, j.family, j.begun, j.morning, j.commitment, j.state, j.ended, t.seed, t.fault, t.salt, x.text as own,
  (select w.coached from coach_trial_job c join coach_trial_turn w using (trial, person, place) where c.job = j.id) as coached
from practice_job j
join practice_truth t on t.job = j.id
left join practice_own_text x on x.own = t.own and x.version = t.version
where j.id = :job and j.person = :person

-- @ entries
select entry, at, actor, kind, canonical, hash, words from practice_entry where job = :job order by entry

-- @ acts
select act, entry, step from practice_act where job = :job order by place

-- @ of
select j.id, j.family, j.begun, j.state, (select count(*) from practice_act a where a.job = j.id) as acts, x.text as own
from practice_job j
left join practice_truth t on t.job = j.id
left join practice_own_text x on x.own = t.own and x.version = t.version
where j.person = :person
order by j.id desc
limit 100

-- @ ended
select id, ended from practice_job where person = :person and state <> 'OPEN' order by id

-- @ silent
select exists (
  select 1 from practice_job j
  join coach_trial_job c on c.job = j.id
  join coach_trial_turn w on w.trial = c.trial and w.person = c.person and w.place = c.place
  where j.person = :person and j.state = 'OPEN' and not w.coached)

-- @ first
select begun from practice_job where person = :person order by id limit 1
