-- Drafts.

-- @ keep
insert into draft (ticket, account, forms, sent, saved)
select serial, :account, jsonb_build_object(cast(:form as text), cast(:fields as jsonb)), '{}', :now
from ticket where serial = :ticket
on conflict (ticket, account) do update
set forms = draft.forms
    || jsonb_build_object(cast(:form as text), coalesce(draft.forms -> cast(:form as text), '{}') || cast(:fields as jsonb)),
  saved = excluded.saved
where coalesce(cast(draft.sent ->> cast(:form as text) as integer), 0) < :version

-- @ sent
insert into draft (ticket, account, forms, sent, saved)
values (:ticket, :account, '{}', jsonb_build_object(cast(:form as text), :version), :now)
on conflict (ticket, account) do update
set forms = draft.forms - cast(:form as text), sent = draft.sent || excluded.sent

-- @ discard
update draft set forms = '{}' where ticket = :ticket and account = :account

-- @ of
select cast(forms as text) as forms, saved from draft where ticket = :ticket and account = :account and forms <> '{}'
