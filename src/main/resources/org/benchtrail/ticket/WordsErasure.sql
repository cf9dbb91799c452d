-- @ erase
select erase_words(cast(:ticket as integer), cast(string_to_array(:entries, ',') as integer[]), :reason, :by, cast(:at as timestamptz))

-- @ erased
select entry, at, decided_by, reason from erased_words where ticket = :ticket order by entry

-- @ forget spelling
-- words that no ticket has any more
delete from ticket_word w using unnest(tsvector_to_array(to_tsvector('simple', :words))) as gone(word)
where w.word = gone.word and not exists (select from ticket t where t.search @@ cast(quote_literal(gone.word) as tsquery))
