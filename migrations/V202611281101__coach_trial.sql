-- Tests of whether work at the first try is worse without the coach. What is stated before one begins is sealed then and never
-- changed; so is what it came to, once its size is reached. The two seeds apart: that of the order is published, that of the devices
-- is bound by its commitment until the end.
create table coach_trial (
  id          integer     primary key generated always as identity,
  stated_by   text        not null,
  stated_at   timestamptz not null,
  question    text        not null,
  margin      integer     not null check (margin between 1 and 30),
  expected    integer     not null check (expected between 50 and 99),
  correlation integer     not null check (correlation between 0 and 50),
  occasions   integer     not null,
  people      integer     not null check (people between 5 and 200),
  jobs_each   integer     not null check (jobs_each between 1 and 12),
  order_seed  text        not null check (length(order_seed) = 64),
  -- of the seed that the devices are made from
  devices     text        not null check (length(devices) = 64),
  stop_rule   text        not null,
  left_out    text        not null,
  analysis    text        not null
);
create trigger coach_trial_stays before update or delete on coach_trial for each row execute function refuse_change();
create trigger coach_trial_is_not_emptied before truncate on coach_trial for each statement execute function refuse_change();

create table coach_trial_seed (
  trial  integer primary key references coach_trial,
  secret bytea   not null check (length(secret) = 32),
  salt   bytea   not null check (length(salt) = 32)
);

-- Jobs of whoever takes part, in their order, fixed when they agree to.
create table coach_trial_turn (
  trial   integer     not null references coach_trial,
  person  text        not null,
  place   integer     not null,
  family  text        not null,
  coached boolean     not null,
  agreed  timestamptz not null,
  primary key (trial, person, place)
);

-- The practice job of a turn; another one if it was broken off for a live ticket.
create table coach_trial_job (
  trial   integer not null,
  person  text    not null,
  place   integer not null,
  attempt integer not null,
  job     integer not null unique references practice_job,
  broken  boolean not null default false,
  primary key (trial, person, place, attempt),
  foreign key (trial, person, place) references coach_trial_turn
);

create table coach_trial_result (
  trial      integer     primary key references coach_trial,
  at         timestamptz not null,
  people     integer     not null,
  -- as text that reads back to the same bits
  difference text        not null,
  error      text        not null,
  upper      text        not null,
  not_worse  boolean     not null
);
create trigger coach_trial_result_stays before update or delete on coach_trial_result
  for each row execute function refuse_change();
create trigger coach_trial_result_is_not_emptied before truncate on coach_trial_result
  for each statement execute function refuse_change();

insert into stream_head (stream, place, hash) values ('training', 0, repeat('0', 64));
create constraint trigger coach_trial_is_sealed after insert on coach_trial
  deferrable initially deferred for each row execute function seal_row('training', '', '');
create constraint trigger coach_trial_result_is_sealed after insert on coach_trial_result
  deferrable initially deferred for each row execute function seal_row('training', '', '');

grant select, insert on coach_trial, coach_trial_seed, coach_trial_turn, coach_trial_job, coach_trial_result to ${serverRole};
grant update (broken) on coach_trial_job to ${serverRole};
