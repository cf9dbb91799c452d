-- @ all
-- What others did to the account is told without who they are.
select jsonb_pretty(jsonb_build_object(
  'account', jsonb_build_object('login', a.login, 'name', a.display_name, 'roles', to_jsonb(a.roles), 'zone', a.zone,
    'mentor', a.mentor, 'active', a.active, 'made', a.created_at),
  'secondFactor', (select f.confirmed from second_factor f where f.account_id = a.id),
  'signIns', coalesce((select jsonb_agg(jsonb_build_object('made', s.made, 'seen', s.seen, 'address', s.address, 'browser', s.browser)
    order by s.made) from sign_in_session s where s.account_id = a.id), '[]'),
  'tokens', coalesce((select jsonb_agg(jsonb_build_object('name', t.name, 'scopes', to_jsonb(t.scopes), 'made', t.created_at,
    'expires', t.expires_at, 'lastUsed', t.last_used, 'revoked', t.revoked_at) order by t.id)
    from api_token t where t.account_id = a.id), '[]'),
  'absences', coalesce((select jsonb_agg(jsonb_build_object('begins', b.begins, 'ends', b.ends, 'withdrawn', b.withdrawn)
    order by b.begins) from absence b where b.account = a.login), '[]'),
  'events', coalesce((select jsonb_agg(jsonb_build_object('at', r.at, 'what', r.what, 'byOneself', r.who = a.login, 'detail', r.detail,
    'address', case when r.who = a.login then r.address end) order by r.id)
    from account_record r where r.about = a.login), '[]')))
from account a where a.login = :login
