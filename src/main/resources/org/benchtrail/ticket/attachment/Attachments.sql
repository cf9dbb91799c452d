-- Two who attach the same file at once both succeed.
-- @ keep
insert into attachment (sha256, content)
values (:sha256, :content)
on conflict do nothing

-- @ size
select length(content) from attachment where sha256 = :sha256

-- @ hashes
select sha256, encode(sha256(content), 'hex') as now from attachment where sha256 = any(cast(:names as text[]))
