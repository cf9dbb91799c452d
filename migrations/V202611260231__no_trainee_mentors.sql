-- Nobody signs off a trainee who is one: of an account that was both, the trainee stays, and the record says so.

insert into account_record (at, who, what, about, detail)
  select now(), '(server)', 'roles set', login,
    'MENTOR taken from ' || array_to_string(roles, ', ') || ': a trainee is no mentor'
  from account where roles @> array['TRAINEE', 'MENTOR']::varchar[];
update account set roles = array_remove(roles, 'MENTOR'), session_version = session_version + 1
where roles @> array['TRAINEE', 'MENTOR']::varchar[];
alter table account add constraint account_no_trainee_mentor check (not roles @> array['TRAINEE', 'MENTOR']::varchar[]);
