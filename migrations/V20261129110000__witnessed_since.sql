-- Since when a witness has seen an entry, and which head was the newest at a time, are asked at each job sheet and each day.

create index cosignature_of on cosignature (key, size);
create index checkpoint_signed on checkpoint (signed_at);
