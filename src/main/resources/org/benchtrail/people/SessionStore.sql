-- Sign-ins that the server knows.

-- @ begin
with fresh as (select translate(rtrim(encode(uuid_send(gen_random_uuid()), 'base64'), '='), '+/', '-_') as token)
insert into sign_in_session (account_id, hash, version, made, seen, address, browser, awaits_code, form_token)
select :account, :hash, :version, :now, :now, :address, :browser, :awaitsCode,
  coalesce((select form_token from sign_in_session where account_id = :account and form_token = :held limit 1), fresh.token)
from fresh

-- @ forget
delete from sign_in_session s using account a
where a.id = s.account_id and a.id = :account
  and (s.version <> a.session_version or s.made <= :madeAfter or s.seen <= :seenAfter)

-- @ find
-- One statement with each request of a page; when the sign-in was last seen is written now and then only.
with good as (
  select id, account_id, version, seen, form_token from sign_in_session
  where hash = :hash and made > :madeAfter and seen > :seenAfter and not awaits_code
), noted as (
  update sign_in_session set seen = :now where id in (select id from good where seen < :notedBefore)
)
select good.id as session_id, a.id as account_id, a.session_version, a.login, a.display_name, a.roles, a.zone,
  f.confirmed is not null as second_factor, good.form_token
from good join account a on a.id = good.account_id left join second_factor f on f.account_id = a.id
where a.active and a.session_version = good.version

-- @ find awaiting
select a.login from sign_in_session s join account a on a.id = s.account_id
where s.hash = :hash and s.awaits_code and s.made > :madeAfter and a.active and a.session_version = s.version

-- @ own
select s.id, s.made, s.seen, s.address, s.browser
from sign_in_session s join account a on a.id = s.account_id
where a.login = :login and s.version = a.session_version and not s.awaits_code and s.made > :madeAfter and s.seen > :seenAfter
order by s.seen desc, s.id desc
limit 50

-- @ end
delete from sign_in_session where hash = :hash

-- @ end one
delete from sign_in_session using account a
where sign_in_session.id = :id and a.id = account_id and a.login = :login

-- @ end others
delete from sign_in_session using account a
where sign_in_session.id <> :present and a.id = account_id and a.login = :login
