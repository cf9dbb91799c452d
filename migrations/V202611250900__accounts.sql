-- Accounts, the tokens of programs, and the record of what was done to accounts.

create table account (
    id              bigint generated always as identity primary key,
    login           text        not null unique check (login ~ '^[a-z0-9._-]{2,40}$'),
    display_name    text        not null check (length(display_name) between 1 and 100),
    roles           varchar(40)[] not null
        check (roles <@ array['TECHNICIAN', 'TRAINEE', 'MENTOR', 'SUPERVISOR', 'ADMINISTRATOR']::varchar[]),
    password_hash   text        not null,
    zone            text        not null default 'UTC',
    active          boolean     not null default true,
    failed_attempts integer     not null default 0 check (failed_attempts >= 0),
    locked_until    timestamptz,
    -- raised by a new password or a deactivation: every older session cookie ends
    session_version integer     not null default 1,
    created_at      timestamptz not null
);

create table api_token (
    id         bigint generated always as identity primary key,
    account_id bigint      not null references account,
    name       text        not null check (length(name) between 1 and 100),
    -- SHA-256 of the secret; the secret itself is never stored
    hash       bytea       not null unique check (length(hash) = 32),
    created_at timestamptz not null,
    expires_at timestamptz not null,
    last_used  timestamptz,
    revoked_at timestamptz
);
create index api_token_account on api_token (account_id);

create table account_record (
    id     bigint generated always as identity primary key,
    at     timestamptz not null,
    who    text        not null,
    what   text        not null,
    about  text        not null,
    detail text        not null
);
create index account_record_about on account_record (about, id);

create function account_record_refuses_change() returns trigger language plpgsql as $$
begin
    raise exception 'account_record is append-only';
end $$;

create trigger account_record_append_only
    before update or delete or truncate on account_record
    for each statement execute function account_record_refuses_change();

grant select, insert on account, api_token, account_record to ${serverRole};
grant update (display_name, roles, password_hash, zone, active, failed_attempts, locked_until, session_version)
    on account to ${serverRole};
grant update (last_used, revoked_at) on api_token to ${serverRole};
