-- Practice jobs that mentors write. The text holds what is true of the device: it is read by who wrote it and, once the job was given to
-- somebody, by supervisors; by nobody who is a trainee.
create table practice_own (
  id        integer     primary key generated always as identity,
  author    text        not null,
  created   timestamptz not null,
  withdrawn timestamptz
);
create index practice_own_of_author on practice_own (author, id);

-- Every text that was saved: a job that was begun stays what it was.
create table practice_own_text (
  own     integer     not null references practice_own,
  version integer     not null,
  text    text        not null,
  saved   timestamptz not null,
  primary key (own, version)
);

-- What the check of a text came to.
create table practice_own_check (
  own     integer     not null,
  version integer     not null,
  checked timestamptz not null,
  clean   boolean     not null,
  result  text        not null,
  primary key (own, version),
  foreign key (own, version) references practice_own_text
);

-- To whom it was given, and the job that they began.
create table practice_own_given (
  id      integer     primary key generated always as identity,
  own     integer     not null,
  version integer     not null,
  person  text        not null,
  by      text        not null,
  given   timestamptz not null,
  job     integer     unique references practice_job,
  foreign key (own, version) references practice_own_text
);
create index practice_own_given_to on practice_own_given (person) where job is null;
create index practice_own_given_of on practice_own_given (own);

alter table practice_truth
  add column own integer,
  add column version integer,
  add foreign key (own, version) references practice_own_text,
  add check ((own is null) = (version is null));

grant select, insert on practice_own, practice_own_text, practice_own_check, practice_own_given to ${serverRole};
grant update (withdrawn) on practice_own to ${serverRole};
grant update (job) on practice_own_given to ${serverRole};
grant update (checked, clean, result) on practice_own_check to ${serverRole};
