-- DropIndex
DROP INDEX "job_tenant_id_updated_at_idx";

-- Nothing lists jobs by when they were changed, and with this index every save wrote all indexes of its job again.
-- With room left on a page a change of columns without an index writes none.
ALTER TABLE job SET (fillfactor = 85);
ALTER TABLE job_fact SET (fillfactor = 85);
ALTER TABLE stage_record SET (fillfactor = 85);
ALTER TABLE ledger_line SET (fillfactor = 85);

-- Who somebody is, in one statement without a transaction of its own: it stands before every request. It reads as
-- app_unscoped and only the application's own login may call it, before it takes the role of a company.
GRANT CREATE ON SCHEMA public TO app_unscoped;
CREATE FUNCTION person_now(wanted uuid)
RETURNS TABLE (user_id uuid, email text, session_version integer, companies jsonb)
LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
BEGIN
  RETURN QUERY
  SELECT person.id, person.email::text, person.session_version,
    (SELECT coalesce(jsonb_agg(jsonb_build_object('tenantId', member.tenant_id, 'tenantName', tenant.name,
        'memberName', member.name, 'role', member.role, 'membershipVersion', member.version)
        ORDER BY tenant.name), '[]')
      FROM membership member JOIN tenant ON tenant.id = member.tenant_id
      WHERE member.user_id = person.id AND member.removed_at IS NULL AND tenant.closed_at IS NULL)
  FROM "user" person WHERE person.id = wanted;
END $$;
ALTER FUNCTION person_now OWNER TO app_unscoped;
REVOKE ALL ON FUNCTION person_now FROM PUBLIC;
GRANT EXECUTE ON FUNCTION person_now TO CURRENT_USER;
REVOKE CREATE ON SCHEMA public FROM app_unscoped;
