-- The page of one's own account.

-- @ names before
select at, detail from account_record where about = :login and what = :what order by id desc limit 20
