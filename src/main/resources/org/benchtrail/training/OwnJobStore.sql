-- Practice jobs that mentors write.

-- @ create
insert into practice_own (author, created) values (:author, :at) returning id

-- @ save
insert into practice_own_text (own, version, text, saved) values (:own, :version, :text, :at)

-- @ check
insert into practice_own_check (own, version, checked, clean, result) values (:own, :version, :at, :clean, :result)
on conflict (own, version) do update set checked = excluded.checked, clean = excluded.clean, result = excluded.result

-- @ lock
select id from practice_own where id = :own for update

-- @ list
select o.id, o.author, t.version, t.text, t.saved, o.withdrawn, c.clean,
  (select count(*) from practice_own_given g where g.own = o.id) as given
from practice_own o
join lateral (select * from practice_own_text x where x.own = o.id order by x.version desc limit 1) t on true
left join practice_own_check c on c.own = t.own and c.version = t.version
where o.author = :viewer or (:all and exists (select 1 from practice_own_given g where g.own = o.id))
order by o.id desc
limit 200

-- @ one
select o.id, o.author, t.version, t.text, t.saved, o.withdrawn, c.clean,
  (select count(*) from practice_own_given g where g.own = o.id) as given
from practice_own o
join lateral (select * from practice_own_text x where x.own = o.id order by x.version desc limit 1) t on true
left join practice_own_check c on c.own = t.own and c.version = t.version
where o.id = :own

-- @ result
select checked, clean, result from practice_own_check where own = :own and version = :version

-- @ versions
select version, saved from practice_own_text where own = :own order by version desc limit 100

-- @ text
select text from practice_own_text where own = :own and version = :version

-- @ give
insert into practice_own_given (own, version, person, by, given) values (:own, :version, :person, :by, :at)

-- @ people
select g.person, g.version, g.given, g.job is not null as begun from practice_own_given g where g.own = :own order by g.id desc
limit 200

-- @ waiting
select g.id, g.own, g.version, g.by, t.text
from practice_own_given g
join practice_own o on o.id = g.own
join practice_own_text t on t.own = g.own and t.version = g.version
where g.person = :person and g.job is null and o.withdrawn is null
order by g.id
limit 50

-- @ lockGiven
select id from practice_own_given where id = :given for update

-- @ begun
update practice_own_given set job = :job where id = :given

-- @ withdraw
update practice_own set withdrawn = :at where id = :own
