-- @ put
insert into closed_case
  (serial, title, device, category, cause, cause_id, sureness, body, findings, closed, closed_by, minutes, known, reopened, search)
values (:serial, :title, :device, :category, :cause, cast(:causeId as text), :sureness, :body, cast(:findings as text[]), :closed,
  :closedBy, cast(:minutes as integer), cast(:known as bigint), false,
  setweight(to_tsvector('simple', :titleWords), 'A') || setweight(to_tsvector('simple', :causeWords), 'B')
    || setweight(to_tsvector('simple', :bodyWords), 'D'))
on conflict (serial) do update set
  title = excluded.title, device = excluded.device, category = excluded.category, cause = excluded.cause,
  cause_id = excluded.cause_id, sureness = excluded.sureness, body = excluded.body, findings = excluded.findings,
  closed = excluded.closed, closed_by = excluded.closed_by, minutes = excluded.minutes, known = excluded.known, reopened = false,
  search = excluded.search

-- @ rewrite
update closed_case set title = :title, cause = :cause, body = :body,
  search = setweight(to_tsvector('simple', :titleWords), 'A') || setweight(to_tsvector('simple', :causeWords), 'B')
    || setweight(to_tsvector('simple', :bodyWords), 'D')
where serial = :serial

-- @ reopen
update closed_case set reopened = true where serial = :serial

-- @ move all
update closed_case set known = :to where known = :from

-- @ move one
update closed_case set known = :to where serial = :serial and known = :from
