-- @ sealed
select index from seal_leaf where stream = :stream and place = :place

-- @ own
select size, note, '' as line from checkpoint where size > :index order by size limit 1

-- @ witnessed
select c.size, c.note, s.line from checkpoint c join cosignature s on s.size = c.size
where c.size > :index and split_part(s.key, '+', 1) = :witness
order by c.size, s.at
limit 1

-- @ keys of
select distinct key from cosignature where split_part(key, '+', 1) = :witness
