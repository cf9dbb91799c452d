-- The words found stand between two signs that no text has a use for; see Highlighted.

-- @ causes
select id, ts_headline('simple', title, query, :whole) as title, category, state,
  ts_headline('simple', shows, query, :passage) as shows, ts_headline('simple', apart, query, :passage) as apart,
  confirmations, measured, last_confirmed, confirmed_by
from known_cause, (select cast(:query as tsquery) as query) q
where id = any(cast(:keys as bigint[]))
order by array_position(cast(:keys as bigint[]), id)

-- @ cases
select serial, ts_headline('simple', title, query, :whole) as title, device, category,
  ts_headline('simple', cause, query, :whole) as cause, sureness, ts_headline('simple', body, query, :passage) as passage,
  findings, closed, minutes, known
from closed_case, (select cast(:query as tsquery) as query) q
where serial = any(cast(:keys as integer[]))
order by array_position(cast(:keys as integer[]), serial)
