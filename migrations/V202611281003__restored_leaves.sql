-- After an old backup was restored the log is ahead of the database. Until its leaves are back nothing is recorded by any door: it would
-- get a place that is taken.
alter table seal_head add column behind text;
grant update (behind) on seal_head to ${serverRole};

create function refuse_while_behind() returns trigger language plpgsql as $$
declare
  why text := (select behind from seal_head);
begin
  if why is not null then
    raise exception '%', why using errcode = 'BT001';
  end if;
  return null;
end $$;
create trigger seal_queue_waits before insert on seal_queue for each statement execute function refuse_while_behind();

-- Leaves that were put back, of records that are lost.
create table lost_leaf (
  index bigint primary key references seal_leaf
);
create trigger lost_leaf_stays before update or delete on lost_leaf for each row execute function refuse_change();
grant select, insert on lost_leaf to ${serverRole};
