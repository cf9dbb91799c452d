-- @ learn
insert into knowledge_word (word) select unnest(cast(:words as text[])) on conflict do nothing

-- @ forget
delete from knowledge_word w
where w.word = any(cast(:words as text[]))
  and not exists (select from closed_case c where c.search @@ cast(quote_literal(w.word) as tsquery))
  and not exists (select from known_cause k where k.search @@ cast(quote_literal(w.word) as tsquery))

-- @ begins
select exists (select from knowledge_word where word like :beginning)

-- @ alike
select word from knowledge_word where word % :word order by similarity(word, :word) desc, word limit :most
