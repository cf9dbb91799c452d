-- What an authority of time-stamps answered of a head, as it came (RFC 3161); what it says stands beside it to be read without it.
create table time_stamp (
  size   bigint primary key references checkpoint,
  at     timestamptz not null,
  by     text not null,
  -- SHA-256 of the answer: not every byte of it is signed
  hash   text not null check (hash ~ '^[0-9a-f]{64}$'),
  answer bytea not null
);
create trigger time_stamp_stays before update or delete on time_stamp for each row execute function refuse_change();
grant select, insert on time_stamp to ${serverRole};
