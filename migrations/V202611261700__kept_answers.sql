-- What a request with a key of its own was answered, so that the same request sent again is not done twice. Kept for a day.

create table kept_answer (
  account  text        not null,
  key      text        not null,
  -- SHA-256 of what was asked
  asked    bytea       not null check (length(asked) = 32),
  made     timestamptz not null,
  status   integer     not null,
  location text        not null,
  etag     text        not null,
  media    text        not null,
  -- compressed (RFC 1952)
  body     bytea       not null,
  primary key (account, key)
);
create index kept_answer_made on kept_answer (made);

grant select, insert, update, delete on kept_answer to ${serverRole};
