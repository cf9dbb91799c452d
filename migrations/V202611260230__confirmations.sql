-- Who wrote words of a known cause does not confirm it, and other words begin its confirmations anew.

create table known_cause_author (
  id    bigint generated always as identity primary key,
  cause bigint not null references known_cause,
  who   text not null,
  unique (cause, who)
);
insert into known_cause_author (cause, who)
  select id, proposed_by from known_cause
  union
  select cause, who from known_cause_change where what in ('PROPOSED', 'CORRECTED', 'SPLIT_OFF');

alter table known_cause_confirmation add column counts boolean not null default true;

-- of its authors, and of words that were corrected since
update known_cause_confirmation c set counts = false
where exists (select from known_cause_author a where a.cause = c.cause and a.who = c.who)
  or c.at < (select max(h.at) from known_cause_change h
             where h.cause = c.cause and h.what = 'CORRECTED' and h.ticket is null);
-- outside a ticket, more than one of a person
update known_cause_confirmation c set counts = false
where c.ticket is null and exists (
  select from known_cause_confirmation e
  where e.cause = c.cause and e.who = c.who and e.ticket is null and e.counts and e.id < c.id);
create unique index known_cause_confirmation_once on known_cause_confirmation (cause, who, coalesce(ticket, 0)) where counts;

update known_cause k set
  confirmations  = (select count(*) from known_cause_confirmation c where c.cause = k.id and c.counts),
  measured       = (select count(*) from known_cause_confirmation c where c.cause = k.id and c.counts and c.measured),
  last_confirmed = (select max(c.at) from known_cause_confirmation c where c.cause = k.id and c.counts),
  confirmed_by   = (select c.who from known_cause_confirmation c where c.cause = k.id and c.counts order by c.at desc, c.id desc limit 1);
update known_cause set state = 'DRAFT' where state = 'CONFIRMED' and confirmations = 0;

grant select, insert on known_cause_author to ${serverRole};
