-- Limits of charts that somebody froze: of which closings, by whom, when and why. They are added to and never changed, so that what
-- was judged by one stays judged.
create table chart_baseline (
  id        bigint      primary key generated always as identity,
  -- null for all kinds of trouble
  category  text,
  -- in small letters; empty for all places
  place     text        not null,
  begins    timestamptz not null,
  ends      timestamptz not null,
  points    integer     not null check (points >= 20),
  outside   integer     not null check (outside between 0 and points),
  -- of the logarithms, as text that reads back to the same bits
  centre    text        not null,
  spread    text        not null,
  rules     text        not null,
  reason    text        not null,
  frozen_by text        not null,
  frozen_at timestamptz not null
);
create trigger chart_baseline_stays before update or delete on chart_baseline for each row execute function refuse_change();
create trigger chart_baseline_is_not_emptied before truncate on chart_baseline for each statement execute function refuse_change();
insert into stream_head (stream, place, hash) values ('figures', 0, repeat('0', 64));
create constraint trigger chart_baseline_is_sealed after insert on chart_baseline
  deferrable initially deferred for each row execute function seal_row('figures', '', 'place reason');
grant select, insert on chart_baseline to ${serverRole};
