-- What in the papers of a ticket asks to be looked at, kept when the lot is frozen and shown when its marks are final; and of each
-- concluded lot how often reviewers, who did not see it, found a defect where it stood.

create table audit_signal (
  lot    text not null references audit_lot,
  ticket integer not null,
  kind   text not null,
  detail text not null,
  primary key (lot, ticket, kind)
);
create trigger audit_signal_stays before update or delete on audit_signal for each row execute function refuse_change();
create trigger audit_signal_is_not_emptied before truncate on audit_signal for each statement execute function refuse_change();

create table audit_signal_worth (
  lot       text not null references audit_lot,
  kind      text not null,
  hits      bigint not null check (hits between 0 and marked),
  marked    bigint not null,
  base_hits bigint not null check (base_hits between 0 and base),
  base      bigint not null,
  primary key (lot, kind)
);

-- The rest of a lot is drawn once, as the sample was.
drop index audit_act_once;
create unique index audit_act_once on audit_act (lot, what)
  where what in ('plan-stated', 'lot-frozen', 'seed-drawn', 'sample-drawn', 'rest-drawn', 'lot-concluded');

grant select, insert on audit_signal, audit_signal_worth to ${serverRole};
