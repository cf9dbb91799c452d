-- Who has which job sheet open. A node that stops without a word is forgotten after a minute.

-- @ opened
insert into sheet_open (connection, node, ticket, account, until)
select cast(:connection as uuid), cast(:node as uuid), serial, :account, :until from ticket where serial = :ticket

-- @ closed
delete from sheet_open where connection = cast(:connection as uuid)

-- @ still open
with gone as (
  delete from sheet_open where until < :now
)
update sheet_open set until = :until where node = cast(:node as uuid)

-- @ state
select t.entries as version,
  coalesce((select string_agg(distinct account, ' ') from sheet_open where ticket = t.serial and until >= :now), '') as accounts
from ticket t
where t.serial = :ticket
