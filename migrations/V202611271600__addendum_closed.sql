-- What was asked to be added and never came is closed by a supervisor; it is not asked of anybody any more.
alter table audit_addendum add column closed boolean not null default false;
alter table audit_addendum add constraint audit_addendum_closed_or_written check (not closed or entry is null);
drop index audit_addendum_of;
create index audit_addendum_of on audit_addendum (asked_of) where entry is null and not closed;
create unique index audit_act_addendum_closed_once on audit_act (lot, (body ->> 'ticket'), (body ->> 'requirement'))
  where what = 'addendum-closed';
