-- What somebody typed on a job sheet and has not recorded yet: one row for a person and a ticket, over all forms of the page.
-- forms: by form, and in it by field, the values; sent: by form, the version on which it was last sent, after which an older
-- page's draft of it comes too late.

create table draft (
  ticket  integer not null references ticket,
  account text not null,
  forms   jsonb not null,
  sent    jsonb not null,
  saved   timestamptz not null,
  primary key (ticket, account)
);
grant select, insert, update on draft to ${serverRole};
