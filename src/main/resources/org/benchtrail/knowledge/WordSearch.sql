-- One text for cases and known causes: {table}, {key}, {time} and {shown} are put in by SearchIndex, with its bounds.

-- the planner must not read whole tables for a word that it thinks common, nor compile a query of a few milliseconds; a list of rows
-- must not outgrow its memory, or every row of its pages is looked at
-- @ settings
select set_config('enable_seqscan', 'off', true) as seqscan, set_config('jit', 'off', true) as jit,
  set_config('work_mem', '32MB', true) as memory, set_config('statement_timeout', '5000', true) as timeout

-- @ stems
select w as word, array_to_string(ts_lexize('english_stem', w), ' ') as stem
from unnest(cast(:words as text[])) w

-- @ of the kind
category = :category

-- ranks what fits among the newest
-- @ newest
with q as not materialized (select cast(:query as tsquery) as query),
newest as materialized (
  select {key} as k, {time} as at, search from {table} where {shown} {and}
  order by {time} desc, {key} desc limit {walk}
),
hits as (select k, at, search from newest, q where search @@ query)
select k, count(*) over () as total, (select count(*) from newest) as looked
from hits, q
order by {rank}(search, query, 1) desc, at desc, k desc
limit {rows}

-- counts how many of the newest have each word
-- @ counts
with terms as materialized (
  select word, cast(query as tsquery) as query from unnest(cast(:words as text[]), cast(:queries as text[])) t (word, query)
),
newest as materialized (
  select search from {table} where {shown} {and}
  order by {time} desc, {key} desc limit {walk}
)
select word, count(search) as found
from terms left join newest on search @@ query
group by word

-- Ranks the newest of what the index of words finds. The index is asked for the rare words alone, and the whole query is hidden from it
-- by coalesce: for a common word it would have to gather hundreds of thousands of rows before it could drop nearly all of them.
-- @ indexed
with q as not materialized (select cast(:query as tsquery) as query),
found as materialized (
  select {key} as k, {time} as at from {table}, q
  where search @@ cast(:rare as tsquery) and coalesce(search, '') @@ query and {shown} {and}
),
hits as (
  select {key} as k, {time} as at, search from {table}
  where {key} in (select k from found order by at desc, k desc limit {ranked})
)
select k, count(*) over () as total, (select count(*) from found) as looked
from hits, q
order by {rank}(search, query, 1) desc, at desc, k desc
limit {rows}
