-- What the forms of a sign-in prove themselves by: 16 random bytes, another for each; one that follows another of the same account in the
-- same browser keeps it, so that a form that was filled in meanwhile can still be sent.
alter table sign_in_session add column form_token text not null
  default translate(rtrim(encode(uuid_send(gen_random_uuid()), 'base64'), '='), '+/', '-_');
