-- @ same
select 1

-- @ same
select 2
