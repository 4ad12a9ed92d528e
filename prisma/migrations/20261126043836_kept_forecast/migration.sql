-- DropIndex
DROP INDEX "forecast_tenant_id_option_id_inputs_hash_key";

-- AlterTable
ALTER TABLE "forecast" DROP COLUMN "compressor_hours",
DROP COLUMN "compressor_starts",
DROP COLUMN "cooling_kwh",
DROP COLUMN "finished_at",
DROP COLUMN "heating_kwh",
DROP COLUMN "problem",
DROP COLUMN "started_at",
DROP COLUMN "state",
ADD COLUMN     "humidity_limit_pct" DOUBLE PRECISION NOT NULL,
ADD COLUMN     "inputs" JSONB NOT NULL,
ADD COLUMN     "members" INTEGER NOT NULL,
ADD COLUMN     "option_label" TEXT NOT NULL,
ADD COLUMN     "seed" INTEGER NOT NULL,
ADD COLUMN     "summary" JSONB NOT NULL,
ADD COLUMN     "superseded_at" TIMESTAMPTZ(3),
ALTER COLUMN "option_id" DROP NOT NULL,
ALTER COLUMN "dry_hours" SET NOT NULL,
ALTER COLUMN "hours_above_limit" SET NOT NULL,
ALTER COLUMN "result" SET NOT NULL;

-- CreateIndex
CREATE INDEX "forecast_tenant_id_option_id_idx" ON "forecast"("tenant_id", "option_id");

-- CreateIndex
CREATE UNIQUE INDEX "forecast_one_in_force_key" ON "forecast"("tenant_id", "job_id") WHERE (superseded_at IS NULL);

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
