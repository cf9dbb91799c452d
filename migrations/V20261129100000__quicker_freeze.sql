-- The freeze of a lot keeps up to tens of thousands of signals, and each looked up the one lot whose row the freeze has locked. No lot is
-- ever taken away.
alter table audit_signal drop constraint audit_signal_lot_fkey;

-- JSON by RFC 8785 as before, with no call of its own for each text, which is nearly all that a record holds.
create or replace function canonical_json(value jsonb) returns text language plpgsql immutable strict parallel safe as $$
begin
  case jsonb_typeof(value)
    when 'object' then
      return '{' || coalesce((select string_agg(
          to_json(e.key)::text || ':' || case jsonb_typeof(e.value) when 'string' then e.value::text else canonical_json(e.value) end,
          ',' order by e.key collate "C")
        from jsonb_each(value) e), '') || '}';
    when 'array' then
      return '[' || coalesce((select string_agg(
          case jsonb_typeof(e.value) when 'string' then e.value::text else canonical_json(e.value) end, ',' order by e.n)
        from jsonb_array_elements(value) with ordinality as e(value, n)), '') || ']';
    when 'number' then
      return case when value::text ~ '^(0|-?[1-9][0-9]{0,14})$' then value::text else to_json(value::text)::text end;
    else
      return value::text;
  end case;
end $$;
