-- AlterTable
ALTER TABLE "attachment" ADD COLUMN     "full_sha256" TEXT,
ADD COLUMN     "held_at" TIMESTAMPTZ(3),
ADD COLUMN     "kind" TEXT NOT NULL DEFAULT 'photo',
ADD COLUMN     "small_sha256" TEXT,
ADD COLUMN     "stage" TEXT;

-- CreateTable
CREATE TABLE "field_contact" (
    "tenant_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "first_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "waiting_fields" INTEGER NOT NULL DEFAULT 0,
    "waiting_photos" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "field_contact_pkey" PRIMARY KEY ("tenant_id","job_id","user_id")
);

-- CreateTable
CREATE TABLE "held_value" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "field_path" TEXT NOT NULL,
    "base" JSONB NOT NULL,
    "value" JSONB NOT NULL,
    "client_id" UUID NOT NULL,
    "device_time" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "decided_at" TIMESTAMPTZ(3),
    "decided_by" UUID,

    CONSTRAINT "held_value_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateIndex
CREATE INDEX "field_contact_tenant_id_user_id_idx" ON "field_contact"("tenant_id", "user_id");

-- CreateIndex
CREATE INDEX "held_value_tenant_id_job_id_state_idx" ON "held_value"("tenant_id", "job_id", "state");

-- CreateIndex
CREATE INDEX "held_value_tenant_id_user_id_idx" ON "held_value"("tenant_id", "user_id");

-- CreateIndex
CREATE INDEX "held_value_tenant_id_decided_by_idx" ON "held_value"("tenant_id", "decided_by");

-- CreateIndex
CREATE UNIQUE INDEX "held_value_tenant_id_client_id_job_id_field_path_key" ON "held_value"("tenant_id", "client_id", "job_id", "field_path");

-- AddForeignKey
ALTER TABLE "field_contact" ADD CONSTRAINT "field_contact_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "field_contact" ADD CONSTRAINT "field_contact_tenant_id_user_id_fkey" FOREIGN KEY ("tenant_id", "user_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "held_value" ADD CONSTRAINT "held_value_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "held_value" ADD CONSTRAINT "held_value_tenant_id_user_id_fkey" FOREIGN KEY ("tenant_id", "user_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "held_value" ADD CONSTRAINT "held_value_tenant_id_decided_by_fkey" FOREIGN KEY ("tenant_id", "decided_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Words and sizes
ALTER TABLE attachment ADD CONSTRAINT attachment_kind_check CHECK (kind IN ('photo', 'report'));
ALTER TABLE held_value ADD CONSTRAINT held_value_reason_check CHECK (reason IN ('after signing', 'handed over'));
ALTER TABLE held_value ADD CONSTRAINT held_value_state_check CHECK (state IN ('waiting', 'taken', 'discarded'));
ALTER TABLE held_value ADD CONSTRAINT held_value_decided_check CHECK ((state = 'waiting') = (decided_by IS NULL));
ALTER TABLE field_contact ADD CONSTRAINT field_contact_waiting_check CHECK (waiting_fields >= 0 AND waiting_photos >= 0);

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
