-- Erases what is kept of a requester. The chain keeps what it had: commitments, of which the salts go, so that nobody can find out any
-- more what they stood for. That they were erased, and by whose decision, is a record of its own. Answers with whether there was
-- something to erase.
create function erase_requester(number bigint, reason text, decided_by text, moment timestamptz) returns boolean
language plpgsql set timezone to 'UTC' as $$
begin
  perform from requester where id = number and erased is null for update;
  if not found then
    return false;
  end if;
  perform append_site_record('erasures', 'requester', jsonb_build_object('requester', number, 'reason', reason,
    'decided_by', decided_by, 'at', moment, 'commitments', (
      select coalesce(jsonb_agg(c.value order by r.place, c.key), '[]')
      from site_record r
      cross join lateral jsonb_each(convert_from(r.canonical, 'UTF8')::jsonb -> 'content') c
      where r.stream = 'requesters' and convert_from(r.canonical, 'UTF8')::jsonb -> 'content' ->> 'id' = number::text
        and c.key in ('name', 'contact') and jsonb_typeof(c.value) = 'string')));
  -- the row's own record follows, and with it the salts of the earlier ones go
  update requester set name = 'erased', contact = '', erased = moment where id = number;
  return true;
end $$;
