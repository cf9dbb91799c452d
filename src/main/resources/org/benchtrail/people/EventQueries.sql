-- The record of accounts, for administrators.

-- @ part
select id, at, who, what, about, detail, address from account_record
where id < :before and (:about = '' or about = :about or who = :about)
order by id desc
limit :most
