-- CreateTable
CREATE TABLE "work_item" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "task" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "key" TEXT,
    "input" JSONB NOT NULL DEFAULT '{}',
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "done" INTEGER NOT NULL DEFAULT 0,
    "total" INTEGER,
    "progress" JSONB,
    "attempt" INTEGER NOT NULL DEFAULT 0,
    "problem" TEXT NOT NULL DEFAULT '',
    "result" TEXT NOT NULL DEFAULT '',
    "next_try_at" TIMESTAMPTZ(3),
    "started_at" TIMESTAMPTZ(3),
    "finished_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "work_item_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateIndex
CREATE INDEX "work_item_tenant_id_state_id_idx" ON "work_item"("tenant_id", "state", "id");

-- CreateIndex
CREATE INDEX "work_item_tenant_id_task_state_idx" ON "work_item"("tenant_id", "task", "state");

-- AddForeignKey
ALTER TABLE "work_item" ADD CONSTRAINT "work_item_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE work_item ADD CONSTRAINT work_item_state_check CHECK (state IN ('waiting', 'running', 'done', 'failed'));

-- As before, and with a say in how often work is tried.
DROP FUNCTION enqueue_work(text, jsonb, text, timestamptz);
CREATE FUNCTION enqueue_work(task text, payload jsonb, key text DEFAULT NULL, run_at timestamptz DEFAULT NULL,
  max_attempts integer DEFAULT NULL)
RETURNS void LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
DECLARE
  company text := nullif(current_setting('app.tenant', true), '');
BEGIN
  IF company IS NULL THEN RAISE EXCEPTION 'no company is set' USING ERRCODE = '42501'; END IF;
  PERFORM graphile_worker.add_job(task,
    payload => (payload || jsonb_build_object('tenantId', company))::json,
    run_at => enqueue_work.run_at,
    job_key => company || ':' || key,
    max_attempts => enqueue_work.max_attempts);
END $$;

REVOKE ALL ON FUNCTION enqueue_work FROM PUBLIC;
GRANT EXECUTE ON FUNCTION enqueue_work TO app_user;

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
