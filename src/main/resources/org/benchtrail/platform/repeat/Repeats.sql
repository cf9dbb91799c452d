-- Answers that are kept for requests that are sent again.

-- @ wait
-- Whoever sends the same at the same time waits here until the first is done.
select 1 from (select pg_advisory_xact_lock(hashtextextended(:name, 0))) as waited

-- @ find
select asked, status, location, etag, media, body from kept_answer
where account = :account and key = :key and made > :keptSince

-- @ keep
with old as (
  delete from kept_answer k using (
    select account, key from kept_answer where made <= :keptSince order by made limit 20 for update skip locked
  ) as o
  where k.account = o.account and k.key = o.key and not (k.account = :account and k.key = :key)
)
insert into kept_answer (account, key, asked, made, status, location, etag, media, body)
values (:account, :key, :asked, :now, :status, :location, :etag, :media, :body)
on conflict (account, key) do update set asked = excluded.asked, made = excluded.made, status = excluded.status,
  location = excluded.location, etag = excluded.etag, media = excluded.media, body = excluded.body
