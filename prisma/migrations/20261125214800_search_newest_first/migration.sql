-- A word that many jobs share fills a page from the newest jobs alone; only a rarer one asks the text index.
-- So the time of a search does not grow with the number of jobs.

GRANT CREATE ON SCHEMA public TO app_search;
SET LOCAL ROLE app_search;

CREATE OR REPLACE FUNCTION search_jobs(
  words text[],
  only_state text DEFAULT NULL,
  only_stage text DEFAULT NULL,
  only_verdict text DEFAULT NULL,
  only_attention boolean DEFAULT NULL,
  only_assigned_to uuid DEFAULT NULL,
  before_number integer DEFAULT NULL,
  at_most integer DEFAULT 50
) RETURNS TABLE (number integer)
LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
DECLARE
  company uuid := nullif(current_setting('app.tenant', true), '')::uuid;
  word text;
  -- Built as text so that each search is planned for its own words.
  conditions text := '';
  newest constant text := '(SELECT tenant_id, id, number, search_text, state, current_stage, verdict, needs_attention'
    ' FROM job WHERE tenant_id = $1 AND number < $7 ORDER BY number DESC LIMIT 2000)';
  source text;
  found integer[];
BEGIN
  IF company IS NULL THEN RETURN; END IF;
  FOREACH word IN ARRAY words LOOP
    conditions := conditions || format(' AND j.search_text LIKE %L',
      '%' || replace(replace(replace(lower(word), '\', '\\'), '%', '\%'), '_', '\_') || '%');
  END LOOP;
  IF only_state IS NOT NULL THEN conditions := conditions || ' AND j.state = $2'; END IF;
  IF only_stage IS NOT NULL THEN conditions := conditions || ' AND j.current_stage = $3'; END IF;
  IF only_verdict IS NOT NULL THEN conditions := conditions || ' AND j.verdict = $4'; END IF;
  IF only_attention IS NOT NULL THEN conditions := conditions || ' AND j.needs_attention = $5'; END IF;
  IF only_assigned_to IS NOT NULL THEN
    conditions := conditions || ' AND EXISTS (SELECT FROM job_assignment a'
      ' WHERE a.tenant_id = j.tenant_id AND a.job_id = j.id AND a.user_id = $6)';
  END IF;
  FOREACH source IN ARRAY ARRAY[newest, 'job'] LOOP
    EXECUTE 'SELECT array_agg(number ORDER BY number DESC) FROM (SELECT j.number FROM ' || source || ' j'
        ' WHERE j.tenant_id = $1 AND j.number < $7' || conditions || ' ORDER BY j.number DESC LIMIT $8) page'
      INTO found
      USING company, only_state, only_stage, only_verdict, only_attention, only_assigned_to,
        coalesce(before_number, 2147483647), at_most;
    EXIT WHEN cardinality(found) = at_most;
  END LOOP;
  RETURN QUERY SELECT unnest(found);
END $$;


RESET ROLE;
REVOKE CREATE ON SCHEMA public FROM app_search;

-- Columns came and went since the tables were guarded.
-- Guards every table of a company: row-level security for new ones, finite numbers for all.
-- new-migration.ts ends each migration that makes or changes tables with this; it may be repeated.
DO $$
DECLARE
  guarded record;
  numbers text;
  unchecked boolean;
BEGIN
  FOR guarded IN
    SELECT c.oid, c.relname AS name, c.relrowsecurity AS has_policy
    FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p')
      AND a.attname = 'tenant_id' AND NOT a.attisdropped
  LOOP
    IF NOT guarded.has_policy THEN
      EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', guarded.name);
      EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', guarded.name);
      EXECUTE format(
        'CREATE POLICY own_company ON %I TO app_user, app_eraser'
        ' USING (tenant_id = nullif(current_setting(''app.tenant'', true), '''')::uuid)'
        ' WITH CHECK (tenant_id = nullif(current_setting(''app.tenant'', true), '''')::uuid)', guarded.name);
      EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO app_user', guarded.name);
      EXECUTE format('GRANT SELECT, DELETE ON %I TO app_eraser', guarded.name);
    END IF;

    -- NaN counts as greater than Infinity, so this keeps it out as well. The check of a table goes with
    -- any of its columns that is dropped.
    SELECT string_agg(format('%1$I > ''-Infinity'' AND %1$I < ''Infinity''', a.attname), ' AND '),
        bool_or(NOT EXISTS (SELECT FROM pg_constraint k WHERE k.conrelid = a.attrelid AND a.attnum = ANY (k.conkey)
          AND k.conname = guarded.name || '_finite_check'))
      INTO numbers, unchecked FROM pg_attribute a
      WHERE a.attrelid = guarded.oid AND a.atttypid = 'double precision'::regtype AND NOT a.attisdropped;
    IF unchecked THEN
      EXECUTE format('ALTER TABLE %I DROP CONSTRAINT IF EXISTS %I', guarded.name, guarded.name || '_finite_check');
      EXECUTE format('ALTER TABLE %I ADD CONSTRAINT %I CHECK (%s)', guarded.name, guarded.name || '_finite_check', numbers);
    END IF;
  END LOOP;
END $$;
