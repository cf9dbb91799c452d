-- What the site decides for itself, from which moment on, by whom: calendar, times by priority, mains, policies. Never altered: a
-- decision is replaced by the next one. Before the first one counts what the server was started with.

create table site_version (
  number   integer primary key check (number >= 1),
  made     timestamptz not null,
  made_by  text not null,
  in_force timestamptz not null check (in_force >= made),
  note     text not null,
  rules    text not null
);
create trigger site_version_stays before update or delete on site_version for each row execute function refuse_change();
create trigger site_version_is_not_emptied before truncate on site_version
  for each statement execute function refuse_change();
grant select, insert on site_version to ${serverRole};

-- What a due time was made from: which decision was the latest then, what is due, and the clock of the ticket in one line. The
-- clock of rows from before is read from the trail when it is needed.
alter table ticket add column due_what text not null default 'FIX';
alter table ticket add column site_version integer not null default 0;
alter table ticket add column clock text not null default '';

-- The clock begins anew when a ticket is reopened.
update ticket t set due = r.at + (t.due - t.opened)
from (select ticket, max(at) as at from trail_entry where kind = 'reopened' group by ticket) r
where r.ticket = t.serial;
