-- Two who attach the same file at once both succeed.
-- @ keep
insert into attachment (sha256, content)
values (:sha256, :content)
on conflict do nothing

-- @ size
select length(content) from attachment where sha256 = :sha256
