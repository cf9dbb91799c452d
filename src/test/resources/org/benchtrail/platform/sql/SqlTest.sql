-- Statements for trying out how they are read and sent.

-- @ one row
select cast(:word as text) as word, 7 as number, cast(8 as bigint) as large_number, 2.5 as half, true as so,
  timestamptz '2031-03-03 08:00:00.123456+00' as at, bytea '\x00ff' as bytes, array['a', 'b'] as list,
  'YES' as choice, cast(null as integer) as missing

-- @ numbers
select n from generate_series(1, 10) n
where n > 0
{and}
order by n desc

-- @ even
n % 2 = 0

-- @ below
n < :below or n = 100
