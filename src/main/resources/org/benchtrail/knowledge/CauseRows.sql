-- @ index
update known_cause
set search = setweight(to_tsvector('simple', :title), 'A') || setweight(to_tsvector('simple', :shows), 'B')
  || setweight(to_tsvector('simple', :apart), 'C') || setweight(to_tsvector('simple', :cure), 'D')
where id = :id
