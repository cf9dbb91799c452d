-- Practice jobs, apart from tickets: nothing outside the training package reads or writes this schema.
-- what is left of a database whose own schema was emptied
drop schema if exists practice cascade;
create schema practice;
grant usage on schema practice to ${serverRole};

create table practice.job (
  id         integer     primary key generated always as identity,
  person     text        not null,
  family     text        not null,
  -- when it was begun, and the morning from which its own time counts
  begun      timestamptz not null,
  morning    timestamptz not null,
  -- of what is true of the device, see practice.truth
  commitment text        not null check (length(commitment) = 64),
  state      text        not null default 'OPEN' check (state in ('OPEN', 'CLOSED', 'GIVEN_UP', 'OVER')),
  ended      timestamptz,
  check ((state = 'OPEN') = (ended is null))
);
create index practice_job_person on practice.job (person, id);

-- What is true of the device. Shown by no page before the job has ended.
create table practice.truth (
  job   integer primary key references practice.job,
  seed  text    not null,
  fault text    not null,
  salt  bytea   not null check (length(salt) = 32)
);

create table practice.entry (
  job       integer     not null references practice.job,
  entry     integer     not null,
  -- in the job's own time
  at        timestamptz not null,
  actor     text        not null,
  kind      text        not null,
  canonical bytea       not null,
  hash      text        not null,
  recorded  timestamptz not null,
  primary key (job, entry)
);

-- What was done with the device, in its order: with the truth it says how the device is now.
create table practice.act (
  job   integer not null references practice.job,
  place integer not null,
  act   text    not null,
  -- the last entry when it was done, and the step
  entry integer not null,
  step  text    not null,
  primary key (job, place)
);

grant select, insert on practice.job, practice.truth, practice.entry, practice.act to ${serverRole};
grant update (state, ended) on practice.job to ${serverRole};
