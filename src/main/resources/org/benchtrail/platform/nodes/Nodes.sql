-- @ begin
-- apart: it reads and writes with accounts of their own what is a person's own or practice; releases before do not
insert into server_node (id, host, release, started, seen, apart) values (cast(:id as uuid), :host, :release, :now, :now, true)

-- @ forget
delete from server_node where seen < :before

-- @ seen
update server_node set seen = :now where id = cast(:id as uuid)

-- @ end
update server_node set seen = :now, ended = :now where id = cast(:id as uuid)

-- @ releases
select distinct release from server_node

-- @ all
select host, release, started, seen, ended from server_node order by seen desc, started desc limit 100
