-- How often somebody may try to sign in, counted on all nodes together; browsers that an account has used; a second factor; what a
-- token may be used for; from where something was done to accounts.

create table throttle (
  id         text primary key,
  state      bytea,
  -- milliseconds since 1970; what is older says nothing any more
  expires_at bigint
);
create index throttle_expires_at on throttle (expires_at);

-- A browser in which the account has signed in before: a stranger who tries its password takes no tries from it.
create table known_browser (
  account_id bigint      not null references account,
  -- SHA-256 of what its cookie holds
  hash       bytea       not null check (length(hash) = 32),
  made       timestamptz not null,
  primary key (account_id, hash)
);

-- True between the password and the code of the second factor: nobody is signed in by it.
alter table sign_in_session add column awaits_code boolean not null default false;

create table second_factor (
  account_id bigint      primary key references account,
  secret     bytea       not null,
  made       timestamptz not null,
  -- from then on it is asked for
  confirmed  timestamptz,
  -- number of the last time step of which a code was taken: none is taken twice
  last_step  bigint      not null default 0
);
create table recovery_code (
  account_id bigint not null references account,
  hash       bytea  not null check (length(hash) = 32),
  primary key (account_id, hash)
);

alter table api_token add column scopes text[] not null default '{READ,ACT,ADMINISTER}';
alter table account_record add column address text not null default '';
create index account_record_at on account_record (at, id);

grant select, insert, update, delete on throttle, second_factor to ${serverRole};
grant select, insert, delete on known_browser, recovery_code to ${serverRole};
