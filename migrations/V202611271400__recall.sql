-- What people answered to the questions at the beginning of a shift, for their own eyes: apart from every other table, and of each
-- person apart. Only the training package reads or writes here, and says first whose it asks for. A backup leaves this schema out.
-- left over where the other tables were thrown away to begin anew
drop schema if exists recall cascade;
create schema recall;

create table recall.answer (
  id     bigint      primary key generated always as identity,
  person text        not null,
  -- the question by its name, see RecallItem; it is made again from the job each time it is needed
  item   text        not null,
  -- as the person's own days are counted
  day    date        not null,
  at     timestamptz not null,
  given  text        not null,
  hit    boolean     not null,
  -- the first answer of a day stands
  unique (person, item, day)
);

-- Days that are over for questions although some were left: skipped, or what was said on them erased.
create table recall.day (
  person text        not null,
  day    date        not null,
  at     timestamptz not null,
  primary key (person, day)
);

alter table recall.answer enable row level security;
alter table recall.day enable row level security;
create policy own on recall.answer using (person = current_setting('recall.person', true));
create policy own on recall.day using (person = current_setting('recall.person', true));

grant usage on schema recall to ${serverRole};
grant select, insert, delete on recall.answer to ${serverRole};
grant select, insert on recall.day to ${serverRole};
