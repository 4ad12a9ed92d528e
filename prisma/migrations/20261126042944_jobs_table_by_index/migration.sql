-- DropIndex
DROP INDEX "job_tenant_id_current_stage_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_customer_sort_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_needs_attention_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_open_callback_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_review_due_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_review_sort_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_stage_sort_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_startup_sort_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_state_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_tech_sort_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_verdict_number_idx";

-- DropIndex
DROP INDEX "job_tenant_id_verdict_sort_number_idx";

-- AlterTable
ALTER TABLE "job_assignment" ADD COLUMN     "job_number" INTEGER NOT NULL DEFAULT 0;

-- CreateIndex
CREATE INDEX "job_by_number_idx" ON "job"("tenant_id", "number", "stage_sort", "verdict_sort", "needs_attention", "open_callback", "startup_sort");

-- CreateIndex
CREATE INDEX "job_by_customer_idx" ON "job"("tenant_id", "customer_sort", "number", "stage_sort", "verdict_sort", "needs_attention", "open_callback", "startup_sort");

-- CreateIndex
CREATE INDEX "job_by_tech_idx" ON "job"("tenant_id", "tech_sort", "number", "stage_sort", "verdict_sort", "needs_attention", "open_callback", "startup_sort");

-- CreateIndex
CREATE INDEX "job_by_stage_idx" ON "job"("tenant_id", "stage_sort", "number", "verdict_sort", "needs_attention", "open_callback", "startup_sort");

-- CreateIndex
CREATE INDEX "job_by_verdict_idx" ON "job"("tenant_id", "verdict_sort", "number", "stage_sort", "needs_attention", "open_callback", "startup_sort");

-- CreateIndex
CREATE INDEX "job_by_attention_idx" ON "job"("tenant_id", "needs_attention", "number", "stage_sort", "verdict_sort", "open_callback", "startup_sort");

-- CreateIndex
CREATE INDEX "job_by_startup_idx" ON "job"("tenant_id", "startup_sort", "number", "stage_sort", "verdict_sort", "needs_attention", "open_callback");

-- CreateIndex
CREATE INDEX "job_by_review_idx" ON "job"("tenant_id", "review_sort", "number", "stage_sort", "verdict_sort", "needs_attention", "open_callback", "startup_sort");

-- CreateIndex
CREATE INDEX "job_stage_by_verdict_idx" ON "job"("tenant_id", "stage_sort", "verdict_sort", "number");

-- CreateIndex
CREATE INDEX "job_stage_by_customer_idx" ON "job"("tenant_id", "stage_sort", "customer_sort", "number");

-- CreateIndex
CREATE INDEX "job_stage_by_tech_idx" ON "job"("tenant_id", "stage_sort", "tech_sort", "number");

-- CreateIndex
CREATE INDEX "job_stage_by_startup_idx" ON "job"("tenant_id", "stage_sort", "startup_sort", "number");

-- CreateIndex
CREATE INDEX "job_stage_by_review_idx" ON "job"("tenant_id", "stage_sort", "review_sort", "number");

-- CreateIndex
CREATE INDEX "job_verdict_by_stage_idx" ON "job"("tenant_id", "verdict_sort", "stage_sort", "number");

-- CreateIndex
CREATE INDEX "job_verdict_by_customer_idx" ON "job"("tenant_id", "verdict_sort", "customer_sort", "number");

-- CreateIndex
CREATE INDEX "job_verdict_by_tech_idx" ON "job"("tenant_id", "verdict_sort", "tech_sort", "number");

-- CreateIndex
CREATE INDEX "job_verdict_by_startup_idx" ON "job"("tenant_id", "verdict_sort", "startup_sort", "number");

-- CreateIndex
CREATE INDEX "job_verdict_by_review_idx" ON "job"("tenant_id", "verdict_sort", "review_sort", "number");

-- CreateIndex
CREATE INDEX "job_attention_by_customer_idx" ON "job"("tenant_id", "customer_sort", "number") WHERE (needs_attention);

-- CreateIndex
CREATE INDEX "job_attention_by_tech_idx" ON "job"("tenant_id", "tech_sort", "number") WHERE (needs_attention);

-- CreateIndex
CREATE INDEX "job_attention_by_stage_idx" ON "job"("tenant_id", "stage_sort", "number") WHERE (needs_attention);

-- CreateIndex
CREATE INDEX "job_attention_by_verdict_idx" ON "job"("tenant_id", "verdict_sort", "number") WHERE (needs_attention);

-- CreateIndex
CREATE INDEX "job_attention_by_startup_idx" ON "job"("tenant_id", "startup_sort", "number") WHERE (needs_attention);

-- CreateIndex
CREATE INDEX "job_attention_by_review_idx" ON "job"("tenant_id", "review_sort", "number") WHERE (needs_attention);

-- CreateIndex
CREATE INDEX "job_complaint_by_number_idx" ON "job"("tenant_id", "number") WHERE (open_callback);

-- CreateIndex
CREATE INDEX "job_complaint_by_customer_idx" ON "job"("tenant_id", "customer_sort", "number") WHERE (open_callback);

-- CreateIndex
CREATE INDEX "job_complaint_by_tech_idx" ON "job"("tenant_id", "tech_sort", "number") WHERE (open_callback);

-- CreateIndex
CREATE INDEX "job_complaint_by_stage_idx" ON "job"("tenant_id", "stage_sort", "number") WHERE (open_callback);

-- CreateIndex
CREATE INDEX "job_complaint_by_verdict_idx" ON "job"("tenant_id", "verdict_sort", "number") WHERE (open_callback);

-- CreateIndex
CREATE INDEX "job_complaint_by_startup_idx" ON "job"("tenant_id", "startup_sort", "number") WHERE (open_callback);

-- CreateIndex
CREATE INDEX "job_complaint_by_review_idx" ON "job"("tenant_id", "review_sort", "number") WHERE (open_callback);

-- CreateIndex
CREATE INDEX "job_assignment_tenant_id_user_id_job_number_idx" ON "job_assignment"("tenant_id", "user_id", "job_number");

-- The jobs of a person by number, without asking the jobs.

CREATE FUNCTION job_assignment_take_number() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  -- A job that is not there is refused by the foreign key.
  NEW.job_number := coalesce((SELECT j.number FROM job j WHERE j.tenant_id = NEW.tenant_id AND j.id = NEW.job_id), 0);
  RETURN NEW;
END $$;
CREATE TRIGGER job_assignment_number BEFORE INSERT ON job_assignment
  FOR EACH ROW EXECUTE FUNCTION job_assignment_take_number();

ALTER TABLE job NO FORCE ROW LEVEL SECURITY;
ALTER TABLE job_assignment NO FORCE ROW LEVEL SECURITY;
UPDATE job_assignment a SET job_number = j.number FROM job j WHERE j.tenant_id = a.tenant_id AND j.id = a.job_id;
ALTER TABLE job FORCE ROW LEVEL SECURITY;
ALTER TABLE job_assignment FORCE ROW LEVEL SECURITY;
GRANT SELECT (job_number) ON job_assignment TO app_search;

-- The parts of four letters of each word, marked with the company. A rare word, a house number above all, shares its
-- threes of letters with thousands of jobs, but its fours with few; shorter words are left to job_search_idx.

CREATE FUNCTION search_parts(company uuid, searched text) RETURNS text[] LANGUAGE sql IMMUTABLE PARALLEL SAFE COST 1000 AS $$
  SELECT coalesce(array_agg(DISTINCT right(company::text, 8) || substr(word, at, 4)), '{}')
    FROM regexp_split_to_table(searched, '\s+') word, generate_series(1, length(word) - 3) at
$$;
CREATE INDEX job_search_parts_idx ON job USING gin (search_parts(tenant_id, search_text));

-- Asked by list_jobs alone since the jobs table came.
DROP FUNCTION search_jobs;

GRANT CREATE ON SCHEMA public TO app_search;
SET LOCAL ROLE app_search;

-- One page of the jobs table: search, filters, order and place, all by index. Under row-level security PostgreSQL may
-- not use an index for LIKE, which is not leakproof; this reads as app_search, whose policy adds no condition, and
-- therefore names the company itself, from the same setting as the policies. It answers only numbers, in their order.
CREATE OR REPLACE FUNCTION list_jobs(
  words text[],
  filters jsonb,
  sort_by text,
  descending boolean,
  after_key text,
  after_number integer,
  at_most integer
) RETURNS TABLE (number integer)
LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path = pg_catalog, public
-- A page is read in less time than it takes to start a second process.
SET max_parallel_workers_per_gather = 0 SET jit = off AS $$
DECLARE
  company uuid := nullif(current_setting('app.tenant', true), '')::uuid;
  way text := CASE WHEN descending THEN 'DESC' ELSE 'ASC' END;
  beyond text := CASE WHEN descending THEN '<' ELSE '>' END;
  kind text := CASE sort_by WHEN 'customer_sort' THEN 'text' WHEN 'tech_sort' THEN 'text'
    WHEN 'stage_sort' THEN 'integer' WHEN 'verdict_sort' THEN 'integer' WHEN 'needs_attention' THEN 'boolean'
    WHEN 'startup_sort' THEN 'date' WHEN 'review_sort' THEN 'date' WHEN 'number' THEN 'integer' END;
  sort_key text := CASE sort_by WHEN 'number' THEN '' ELSE 'j.' || sort_by || ' ' || way || ', ' END;
  like_words text[] := ARRAY(
    SELECT '%' || replace(replace(replace(lower(word), '\', '\\'), '%', '\%'), '_', '\_') || '%' FROM unnest(words) word);
  searching boolean := cardinality(words) > 0;
  people text[] := array_remove(ARRAY[filters->>'onlyOf', filters->>'assignedTo'], NULL);
  conditions text[] := '{}';
  stage integer := array_position(ARRAY['load_summary', 'equipment_selection', 'airflow_setup', 'control_setup',
    'startup_record', 'humidity_review'], filters->>'stage');
  verdict integer := array_position(ARRAY['falls short', 'can''t tell', 'not measured', 'meets'], filters->>'verdict');
  -- Built as text so that each question is planned for its own words and values.
  source text := format('FROM job j WHERE j.tenant_id = %L', company);
  place text := '';
  page text := format('SELECT array_agg(p.number ORDER BY p.key %1$s, p.number %1$s) FROM (', way);
  reach integer;
  largest integer;
  rare text;
  found integer[];
BEGIN
  IF company IS NULL THEN RETURN; END IF;
  IF kind IS NULL THEN RAISE EXCEPTION 'jobs are not sorted by %', sort_by USING ERRCODE = '22023'; END IF;
  IF after_number IS NOT NULL THEN
    place := CASE WHEN sort_by = 'number' THEN format(' AND j.number %s %s', beyond, after_number)
      ELSE format(' AND (j.%I, j.number) %s (%L::%s, %s)', sort_by, beyond, after_key, kind, after_number) END;
  END IF;

  -- The rarest first: each of these has an index for every order.
  IF filters ? 'complaint' THEN conditions := conditions || ' AND j.open_callback'::text; END IF;
  IF filters ? 'attention' THEN conditions := conditions || ' AND j.needs_attention'::text; END IF;
  IF filters ? 'verdict' THEN conditions := conditions || format(' AND j.verdict_sort = %L', verdict); END IF;
  IF filters ? 'stage' THEN conditions := conditions || format(' AND j.stage_sort = %L', stage); END IF;
  IF cardinality(people) > 0 AND sort_by = 'number' THEN
    -- So has a person, for the order by number.
    source := format('FROM job_assignment own JOIN job j ON j.tenant_id = %1$L AND j.number = own.job_number'
      ' WHERE own.tenant_id = %1$L AND own.user_id = %2$L', company, people[1]);
    place := replace(place, 'j.number', 'own.job_number');
    people := people[2:];
  ELSE
    source := source || coalesce(conditions[1], '');
    conditions := conditions[2:];
  END IF;
  IF filters ? 'startupOpen' THEN conditions := conditions || ' AND j.stage_sort < 6'::text; END IF;
  IF filters ? 'dueFrom' THEN
    conditions := conditions || format(' AND j.startup_sort >= %L', filters->>'dueFrom');
  END IF;
  IF filters ? 'dueBefore' THEN
    conditions := conditions || format(' AND j.startup_sort < %L', filters->>'dueBefore');
  END IF;
  source := source || place;

  -- Nothing is left to be asked of single jobs: one walk along an index.
  IF cardinality(conditions) = 0 AND cardinality(people) = 0 AND NOT searching THEN
    RETURN QUERY EXECUTE format('SELECT j.number %s ORDER BY %sj.number %s LIMIT %s', source, sort_key, way, at_most);
    RETURN;
  END IF;

  -- What is not rare fills a page from the first thousands of the order asked for.
  SELECT max(j.number) INTO largest FROM job j WHERE j.tenant_id = company;
  FOREACH reach IN ARRAY CASE WHEN searching OR cardinality(people) > 0 THEN '{1000,20000}'::integer[] ELSE '{20000}' END
  LOOP
    EXECUTE page || format('SELECT j.%1$I AS key, j.number FROM (SELECT j.number, j.stage_sort, j.verdict_sort,'
        ' j.needs_attention, j.open_callback, j.startup_sort%2$s%3$s %4$s ORDER BY %5$sj.number %6$s LIMIT %7$s) j WHERE true',
        sort_by, CASE WHEN sort_by IN ('customer_sort', 'tech_sort', 'review_sort') THEN ', j.' || sort_by END,
        CASE WHEN searching THEN ', j.search_text' END, source, sort_key, way, reach)
      || array_to_string(conditions, '')
      || CASE WHEN searching THEN format(' AND j.search_text LIKE ALL (%L)', like_words) ELSE '' END
      -- Not EXISTS: asked of one job after the other, of no more than the page needs.
      || coalesce((SELECT string_agg(format(' AND (SELECT true FROM job_assignment a WHERE a.tenant_id = %L'
        ' AND a.user_id = %L AND a.job_number = j.number LIMIT 1)', company, person), '') FROM unnest(people) person), '')
      || format(' LIMIT %s) p', at_most)
      INTO found;
    IF cardinality(found) = at_most OR largest <= reach THEN
      RETURN QUERY SELECT unnest(found);
      RETURN;
    END IF;
    -- Twenty times as far would not fill it either.
    EXIT WHEN coalesce(cardinality(found), 0) * 20 < at_most;
  END LOOP;

  -- What is rare is found by what makes it so, and sorted. Of the words it is the one that the newest jobs hold least;
  -- to ask for all of them would be to read the lists of the common ones.
  IF searching THEN
    SELECT word INTO rare FROM unnest(words) WITH ORDINALITY given(word, at)
      ORDER BY (SELECT count(*) FROM (SELECT j.search_text FROM job j WHERE j.tenant_id = company
        ORDER BY j.number DESC LIMIT 200) newest WHERE newest.search_text LIKE like_words[at]), length(word) DESC LIMIT 1;
    conditions := conditions || format(' AND (j.search_text || '''') LIKE ALL (%L)', like_words)
      || CASE WHEN length(rare) < 4 THEN format(' AND j.search_text LIKE %L', like_words[array_position(words, rare)])
        ELSE format(' AND search_parts(j.tenant_id, j.search_text) @> %L', search_parts(company, lower(rare))) END;
    IF length(rare) >= 4 THEN
      -- The parts name the company; its own index would be read whole only to say so again.
      source := replace(source, 'WHERE j.tenant_id =', 'WHERE j.tenant_id::text =');
    END IF;
  END IF;
  EXECUTE page || format('SELECT * FROM (SELECT j.%1$I AS key, j.number %2$s%3$s%4$s OFFSET 0) every'
      ' ORDER BY key %5$s, number %5$s LIMIT %6$s) p', sort_by, source, array_to_string(conditions, ''),
      (SELECT string_agg(format(' AND EXISTS (SELECT FROM job_assignment a WHERE a.tenant_id = %L AND a.user_id = %L'
        ' AND a.job_number = j.number)', company, person), '') FROM unnest(people) person), way, at_most)
    INTO found;
  RETURN QUERY SELECT unnest(found);
END $$;

RESET ROLE;
REVOKE CREATE ON SCHEMA public FROM app_search;

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
