-- Both extensions ship with PostgreSQL and are trusted: the owner of the database may create them.
CREATE EXTENSION IF NOT EXISTS pg_trgm;
CREATE EXTENSION IF NOT EXISTS btree_gin;

-- Nobody signs in as these roles. The application signs in as the owner of the tables and takes one of
-- them for the length of a transaction:
--   app_user      works inside the company named by the setting app.tenant
--   app_unscoped  finds out who someone is before a company is known (lib/db/unscoped)
--   app_eraser    removes a company
--   app_search    owns the one function that searches jobs by text
-- The owner itself sees no row of any company, because row-level security is forced.
DO $$
DECLARE
  wanted text;
  terms text := '';
BEGIN
  -- From 16 on a member inherits unless told otherwise; inherited rights would reach every transaction.
  IF current_setting('server_version_num')::int >= 160000 THEN
    terms := ' WITH INHERIT FALSE, SET TRUE';
  END IF;
  FOREACH wanted IN ARRAY ARRAY['app_user', 'app_unscoped', 'app_eraser', 'app_search'] LOOP
    BEGIN
      IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = wanted) THEN
        EXECUTE format('CREATE ROLE %I NOLOGIN NOINHERIT NOBYPASSRLS', wanted);
      END IF;
      EXECUTE format('GRANT %I TO CURRENT_USER%s', wanted, terms);
    EXCEPTION WHEN insufficient_privilege THEN
      -- Fine when an administrator has made the role and granted it beforehand.
      IF NOT pg_has_role(wanted, 'MEMBER') THEN
        RAISE EXCEPTION 'The database user may not create or grant the role %. Give it CREATEROLE, or let an administrator run: CREATE ROLE % NOLOGIN NOBYPASSRLS; GRANT % TO %;', wanted, wanted, wanted, current_user;
      END IF;
    END;
  END LOOP;
END $$;

GRANT USAGE ON SCHEMA public TO app_user, app_unscoped, app_eraser, app_search;
