-- How much somebody wants to be shown beside a requirement, where it is not left to the coach: for their own eyes and their mentor's.
-- Only the training package reads or writes here, and says first whose it asks for. A backup leaves this schema out.
-- left over where the other tables were thrown away to begin anew
drop schema if exists coach cascade;
create schema coach;

create table coach.choice (
  id     bigint      primary key generated always as identity,
  person text        not null,
  -- of a requirement; empty for all of them
  code   text        not null,
  -- null: left to the coach again
  level  text        check (level in ('SILENT', 'PROMPT', 'COMPLETION', 'EXAMPLE')),
  at     timestamptz not null
);
create index choice_of_person on coach.choice (person, id);

alter table coach.choice enable row level security;
create policy own on coach.choice using (person = current_setting('coach.person', true));

grant usage on schema coach to ${serverRole};
grant select, insert on coach.choice to ${serverRole};

-- the moves and refusals of a person, by which the coach sees what was left at the first try
create index trail_entry_moved on trail_entry (actor) where kind in ('advanced', 'closed', 'refused');
