-- Second factors of accounts.

-- @ asked
select count(*) from second_factor where account_id = :account and confirmed is not null

-- @ of
select f.account_id, f.secret, f.confirmed is not null as confirmed, f.last_step,
  (select count(*) from recovery_code c where c.account_id = f.account_id) as codes_left
from second_factor f join account a on a.id = f.account_id where a.login = :login

-- @ begin
insert into second_factor (account_id, secret, made)
select id, :secret, :now from account where login = :login
on conflict (account_id) do update set secret = excluded.secret, made = excluded.made, last_step = 0
where second_factor.confirmed is null

-- @ take step
update second_factor set last_step = :step where account_id = :account and last_step < :step

-- @ confirm
update second_factor set confirmed = :now where account_id = :account and confirmed is null

-- @ keep code
insert into recovery_code (account_id, hash) values (:account, :hash)

-- @ take code
delete from recovery_code where account_id = :account and hash = :hash

-- @ end codes
delete from recovery_code c using account a where a.id = c.account_id and a.login = :login

-- @ end
delete from second_factor f using account a where a.id = f.account_id and a.login = :login
