-- @ erase
select erase_requester(:requester, :reason, :by, cast(:at as timestamptz))

-- @ of the same name
-- other numbers under which somebody of that name is kept
select o.id from requester r join requester o on lower(o.name) = lower(r.name) and o.id <> r.id and o.erased is null
where r.id = :requester order by 1
