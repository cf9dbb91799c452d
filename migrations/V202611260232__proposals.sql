-- Changes that take two supervisors: what was proposed is never altered, and nobody confirms what is their own.

create table proposal (
  id          bigint generated always as identity primary key,
  kind        text not null,
  -- in one line
  what        text not null,
  -- JSON of the feature that makes the change
  change      text not null,
  note        text not null,
  proposed_by text not null,
  proposed_at timestamptz not null,
  state       text not null check (state in ('OPEN', 'CONFIRMED', 'DECLINED', 'WITHDRAWN')),
  decided_by  text,
  decided_at  timestamptz,
  answer      text,
  -- page that shows what was made
  made        text,
  check ((state = 'OPEN') = (decided_by is null)),
  check ((decided_by is null) = (decided_at is null)),
  check (state not in ('CONFIRMED', 'DECLINED') or decided_by <> proposed_by),
  check (state <> 'WITHDRAWN' or decided_by = proposed_by),
  check ((state = 'DECLINED') = (answer is not null)),
  check ((state = 'CONFIRMED') = (made is not null))
);
create index proposal_open on proposal (id) where state = 'OPEN';
create index proposal_decided on proposal (decided_at desc, id desc) where state <> 'OPEN';

create function proposal_refuses_change() returns trigger language plpgsql as $$
begin
  if tg_op = 'UPDATE' and old.state = 'OPEN'
      and (old.id, old.kind, old.what, old.change, old.note, old.proposed_by, old.proposed_at)
        = (new.id, new.kind, new.what, new.change, new.note, new.proposed_by, new.proposed_at) then
    return new;
  end if;
  raise exception 'a proposal is not altered, and decided once' using errcode = 'insufficient_privilege';
end $$;
create trigger proposal_stays before update or delete on proposal
  for each row execute function proposal_refuses_change();

grant select, insert on proposal to ${serverRole};
grant update (state, decided_by, decided_at, answer, made) on proposal to ${serverRole};

-- versions of before stay as they are
alter table catalogue_version add column confirmed_by text;
alter table catalogue_version add constraint catalogue_version_takes_two
  check (made_by = 'server' or (confirmed_by is not null and confirmed_by <> made_by)) not valid;
