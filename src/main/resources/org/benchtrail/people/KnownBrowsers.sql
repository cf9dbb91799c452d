-- Browsers in which accounts have signed in.

-- @ known
select count(*) from known_browser b join account a on a.id = b.account_id
where a.login = :login and b.hash = :hash

-- @ remember
insert into known_browser (account_id, hash, made) values (:account, :hash, :now)

-- @ forget old
delete from known_browser where account_id = :account and hash not in (
  select hash from known_browser where account_id = :account order by made desc limit 20
)
