-- @ mains
select coalesce(
  (select p.mains from device d join place p on p.id = d.place where lower(d.label) = :device),
  (select p.mains from place p where lower(p.name) = :place),
  '') as mains
