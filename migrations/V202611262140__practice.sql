-- Practice jobs, apart from tickets: nothing outside the training package reads or writes these tables.

create table practice_job (
  id         integer     primary key generated always as identity,
  person     text        not null,
  family     text        not null,
  -- when it was begun, and the morning from which its own time counts
  begun      timestamptz not null,
  morning    timestamptz not null,
  -- of what is true of the device, see practice_truth
  commitment text        not null check (length(commitment) = 64),
  state      text        not null default 'OPEN' check (state in ('OPEN', 'CLOSED', 'GIVEN_UP', 'OVER')),
  ended      timestamptz,
  check ((state = 'OPEN') = (ended is null))
);
create index practice_job_of_person on practice_job (person, id);

-- What is true of the device. Shown by no page before the job has ended.
create table practice_truth (
  job   integer primary key references practice_job,
  seed  text    not null,
  fault text    not null,
  salt  bytea   not null check (length(salt) = 32)
);

create table practice_entry (
  job       integer     not null references practice_job,
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
create table practice_act (
  job   integer not null references practice_job,
  place integer not null,
  act   text    not null,
  -- the last entry when it was done, and the step
  entry integer not null,
  step  text    not null,
  primary key (job, place)
);

grant select, insert on practice_job, practice_truth, practice_entry, practice_act to ${serverRole};
grant update (state, ended) on practice_job to ${serverRole};
