-- Sign-ins that the server knows and can end; who is away and who stands in; which mentor a trainee has.

create table sign_in_session (
  id         bigint generated always as identity primary key,
  account_id bigint      not null references account,
  -- SHA-256 of what the cookie holds, which itself is never stored
  hash       bytea       not null unique check (length(hash) = 32),
  -- of the account when it signed in: a new password or a closing raises it
  version    integer     not null,
  made       timestamptz not null,
  seen       timestamptz not null,
  address    text        not null,
  browser    text        not null
);
create index sign_in_session_account on sign_in_session (account_id, seen);

create table absence (
  id        bigint generated always as identity primary key,
  account   text        not null references account (login),
  begins    timestamptz not null,
  -- the first moment after it
  ends      timestamptz not null check (ends > begins),
  delegate  text        not null references account (login) check (delegate <> account),
  noted     timestamptz not null,
  noted_by  text        not null,
  withdrawn timestamptz
);
create index absence_account on absence (account, ends) where withdrawn is null;
create index absence_delegate on absence (delegate, ends) where withdrawn is null;

alter table account add column mentor text references account (login) check (mentor <> login);
create index account_mentor on account (mentor) where mentor is not null;

grant select, insert, delete on sign_in_session to ${serverRole};
grant update (seen) on sign_in_session to ${serverRole};
grant select, insert on absence to ${serverRole};
grant update (withdrawn) on absence to ${serverRole};
grant update (mentor) on account to ${serverRole};
