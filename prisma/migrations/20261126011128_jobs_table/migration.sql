-- DropIndex
DROP INDEX "job_tenant_id_needs_attention_number_idx";

-- AlterTable
ALTER TABLE "job" ADD COLUMN     "customer_sort" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "open_callback" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "review_sort" DATE NOT NULL DEFAULT '9999-12-31'::date,
ADD COLUMN     "stage_sort" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "startup_sort" DATE NOT NULL DEFAULT '9999-12-31'::date,
ADD COLUMN     "tech_sort" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "verdict_sort" INTEGER NOT NULL DEFAULT 0;

-- CreateIndex
CREATE INDEX "job_tenant_id_needs_attention_number_idx" ON "job"("tenant_id", "needs_attention", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_customer_sort_number_idx" ON "job"("tenant_id", "customer_sort", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_tech_sort_number_idx" ON "job"("tenant_id", "tech_sort", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_stage_sort_number_idx" ON "job"("tenant_id", "stage_sort", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_verdict_sort_number_idx" ON "job"("tenant_id", "verdict_sort", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_startup_sort_number_idx" ON "job"("tenant_id", "startup_sort", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_review_sort_number_idx" ON "job"("tenant_id", "review_sort", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_open_callback_number_idx" ON "job"("tenant_id", "open_callback", "number");

-- Sort keys are never null and carry an index each, so that every column sorts with one walk along an index.

CREATE OR REPLACE FUNCTION job_write_search_text() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  -- A missing customer or home leaves '' here and is then refused by its foreign key.
  NEW.search_text := coalesce(
    job_search_text(NEW.tenant_id, NEW.number, NEW.title, NEW.customer_id, NEW.home_id), '');
  NEW.customer_sort := coalesce(
    (SELECT lower(c.name) FROM customer c WHERE c.tenant_id = NEW.tenant_id AND c.id = NEW.customer_id), '');
  RETURN NEW;
END $$;

CREATE FUNCTION job_write_sort_keys() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  -- In the order of the work; what is all signed comes last.
  NEW.stage_sort := coalesce(array_position(ARRAY['load_summary', 'equipment_selection', 'airflow_setup',
    'control_setup', 'startup_record', 'humidity_review'], NEW.current_stage), 7);
  -- The worst first; what is not judged yet comes last.
  NEW.verdict_sort := coalesce(
    array_position(ARRAY['falls short', 'can''t tell', 'not measured', 'meets'], NEW.verdict), 5);
  IF NEW.tech_sort = '' THEN NEW.tech_sort := chr(65533); END IF;
  NEW.startup_sort := coalesce(NEW.startup_due, '9999-12-31');
  NEW.review_sort := coalesce(NEW.review_due, '9999-12-31');
  RETURN NEW;
END $$;
CREATE TRIGGER job_3_write_sort_keys BEFORE INSERT OR UPDATE ON job
  FOR EACH ROW EXECUTE FUNCTION job_write_sort_keys();

CREATE FUNCTION job_tech_sort(company uuid, job uuid) RETURNS text
LANGUAGE sql STABLE SET search_path = pg_catalog, public AS $$
  -- A letter after all others: nobody assigned comes last.
  SELECT coalesce(string_agg(lower(m.name), ', ' ORDER BY lower(m.name)), chr(65533))
    FROM job_assignment a JOIN membership m ON m.tenant_id = a.tenant_id AND m.user_id = a.user_id
    WHERE a.tenant_id = company AND a.job_id = job
$$;

CREATE FUNCTION job_follow_techs() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  -- The company goes as a whole; its jobs are removed next.
  IF current_user = 'app_eraser' THEN RETURN NULL; END IF;
  IF TG_TABLE_NAME = 'membership' THEN
    UPDATE job SET tech_sort = job_tech_sort(tenant_id, id) WHERE tenant_id = NEW.tenant_id
      AND id IN (SELECT job_id FROM job_assignment WHERE tenant_id = NEW.tenant_id AND user_id = NEW.user_id);
  ELSIF TG_OP = 'DELETE' THEN
    UPDATE job SET tech_sort = job_tech_sort(tenant_id, id) WHERE tenant_id = OLD.tenant_id AND id = OLD.job_id;
  ELSE
    UPDATE job SET tech_sort = job_tech_sort(tenant_id, id) WHERE tenant_id = NEW.tenant_id AND id = NEW.job_id;
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER job_assignment_sort AFTER INSERT OR DELETE ON job_assignment
  FOR EACH ROW EXECUTE FUNCTION job_follow_techs();
CREATE TRIGGER membership_sort AFTER UPDATE OF name ON membership
  FOR EACH ROW EXECUTE FUNCTION job_follow_techs();

CREATE FUNCTION job_follow_callbacks() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  UPDATE job SET open_callback = EXISTS (
      SELECT FROM callback c WHERE c.tenant_id = NEW.tenant_id AND c.job_id = NEW.job_id AND c.state <> 'closed')
    WHERE tenant_id = NEW.tenant_id AND id = NEW.job_id;
  RETURN NULL;
END $$;
CREATE TRIGGER callback_open AFTER INSERT OR UPDATE OF state ON callback
  FOR EACH ROW EXECUTE FUNCTION job_follow_callbacks();

-- One page of the jobs table: search, filters, order and place, all by index. Reads as app_search, for the
-- reasons given at search_jobs, and answers only numbers, in their order.
CREATE FUNCTION list_jobs(
  words text[],
  filters jsonb,
  sort_by text,
  descending boolean,
  after_key text,
  after_number integer,
  at_most integer
) RETURNS TABLE (number integer)
LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
DECLARE
  company uuid := nullif(current_setting('app.tenant', true), '')::uuid;
  word text;
  way text := CASE WHEN descending THEN 'DESC' ELSE 'ASC' END;
  beyond text := CASE WHEN descending THEN '<' ELSE '>' END;
  kind text := CASE sort_by WHEN 'customer_sort' THEN 'text' WHEN 'tech_sort' THEN 'text'
    WHEN 'stage_sort' THEN 'integer' WHEN 'verdict_sort' THEN 'integer' WHEN 'needs_attention' THEN 'boolean'
    WHEN 'startup_sort' THEN 'date' WHEN 'review_sort' THEN 'date' WHEN 'number' THEN 'integer' END;
  -- Built as text so that each question is planned for its own words and values.
  query text;
BEGIN
  IF company IS NULL THEN RETURN; END IF;
  IF kind IS NULL THEN RAISE EXCEPTION 'jobs are not sorted by %', sort_by USING ERRCODE = '22023'; END IF;
  query := format('SELECT j.number FROM job j WHERE j.tenant_id = %L', company);
  FOREACH word IN ARRAY words LOOP
    query := query || format(' AND j.search_text LIKE %L',
      '%' || replace(replace(replace(lower(word), '\', '\\'), '%', '\%'), '_', '\_') || '%');
  END LOOP;
  IF filters ? 'stage' THEN query := query || format(' AND j.current_stage = %L', filters->>'stage'); END IF;
  IF filters ? 'verdict' THEN query := query || format(' AND j.verdict = %L', filters->>'verdict'); END IF;
  IF filters ? 'attention' THEN query := query || ' AND j.needs_attention'; END IF;
  IF filters ? 'complaint' THEN query := query || ' AND j.open_callback'; END IF;
  IF filters ? 'startupOpen' THEN query := query || ' AND j.stage_sort < 6'; END IF;
  IF filters ? 'dueFrom' THEN query := query || format(' AND j.startup_sort >= %L', filters->>'dueFrom'); END IF;
  IF filters ? 'dueBefore' THEN query := query || format(' AND j.startup_sort < %L', filters->>'dueBefore'); END IF;
  IF filters ? 'assignedTo' THEN
    query := query || format(' AND EXISTS (SELECT FROM job_assignment a'
      ' WHERE a.tenant_id = j.tenant_id AND a.job_id = j.id AND a.user_id = %L)', filters->>'assignedTo');
  END IF;
  IF filters ? 'onlyOf' THEN
    query := query || format(' AND EXISTS (SELECT FROM job_assignment b'
      ' WHERE b.tenant_id = j.tenant_id AND b.job_id = j.id AND b.user_id = %L)', filters->>'onlyOf');
  END IF;
  IF after_number IS NOT NULL THEN
    query := query || CASE WHEN sort_by = 'number' THEN format(' AND j.number %s %s', beyond, after_number)
      ELSE format(' AND (j.%I, j.number) %s (%L::%s, %s)', sort_by, beyond, after_key, kind, after_number) END;
  END IF;
  query := query || CASE WHEN sort_by = 'number' THEN format(' ORDER BY j.number %s', way)
    ELSE format(' ORDER BY j.%I %s, j.number %s', sort_by, way, way) END;
  RETURN QUERY EXECUTE query || format(' LIMIT %s', at_most);
END $$;

GRANT SELECT (customer_sort, tech_sort, stage_sort, verdict_sort, startup_sort, review_sort, open_callback)
  ON job TO app_search;
REVOKE ALL ON FUNCTION list_jobs FROM PUBLIC;
GRANT EXECUTE ON FUNCTION list_jobs TO app_user;
GRANT CREATE ON SCHEMA public TO app_search;
ALTER FUNCTION list_jobs OWNER TO app_search;
REVOKE CREATE ON SCHEMA public FROM app_search;

-- Rows that are there already. The owner sees them only while the policies are not forced.
ALTER TABLE job NO FORCE ROW LEVEL SECURITY;
ALTER TABLE customer NO FORCE ROW LEVEL SECURITY;
ALTER TABLE home NO FORCE ROW LEVEL SECURITY;
ALTER TABLE membership NO FORCE ROW LEVEL SECURITY;
ALTER TABLE job_assignment NO FORCE ROW LEVEL SECURITY;
ALTER TABLE callback NO FORCE ROW LEVEL SECURITY;
UPDATE job SET search_text = '', tech_sort = job_tech_sort(tenant_id, id), open_callback = EXISTS (
  SELECT FROM callback c WHERE c.tenant_id = job.tenant_id AND c.job_id = job.id AND c.state <> 'closed');
ALTER TABLE job FORCE ROW LEVEL SECURITY;
ALTER TABLE customer FORCE ROW LEVEL SECURITY;
ALTER TABLE home FORCE ROW LEVEL SECURITY;
ALTER TABLE membership FORCE ROW LEVEL SECURITY;
ALTER TABLE job_assignment FORCE ROW LEVEL SECURITY;
ALTER TABLE callback FORCE ROW LEVEL SECURITY;

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
