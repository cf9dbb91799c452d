-- To whom which event log was given, and when: for those who may see exports.
create table export_given (
  id     bigint      primary key generated always as identity,
  month  text        not null,
  format text        not null,
  person text        not null,
  at     timestamptz not null,
  -- the newest head of the log then; empty if there was none
  head   text        not null
);

grant select, insert on export_given to ${serverRole};
