-- AlterTable
ALTER TABLE "webhook" ADD COLUMN     "failures" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "paused_reason" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "webhook_delivery" ADD COLUMN     "occasion" TEXT;

-- CreateIndex
CREATE UNIQUE INDEX "webhook_delivery_tenant_id_webhook_id_occasion_key" ON "webhook_delivery"("tenant_id", "webhook_id", "occasion");

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
