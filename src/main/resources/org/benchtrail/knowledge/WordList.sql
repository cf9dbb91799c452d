-- @ learn
insert into knowledge_word (word) select unnest(cast(:words as text[])) on conflict do nothing

-- @ begins
select exists (select from knowledge_word where word like :beginning)

-- @ alike
select word from knowledge_word where word % :word order by similarity(word, :word) desc, word limit :most
