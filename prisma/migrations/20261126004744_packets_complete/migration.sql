-- AlterTable
ALTER TABLE "brand" ADD COLUMN     "closing_words" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "cover_style" TEXT NOT NULL DEFAULT 'ledger',
ADD COLUMN     "cover_words" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "labor_warranty_years" INTEGER,
ADD COLUMN     "maintenance_months" INTEGER,
ADD COLUMN     "paper" TEXT NOT NULL DEFAULT 'letter',
ADD COLUMN     "parts_warranty_years" INTEGER;

-- AlterTable
ALTER TABLE "packet" ADD COLUMN     "language" TEXT NOT NULL DEFAULT 'en',
ADD COLUMN     "paper" TEXT NOT NULL DEFAULT 'letter';

-- AlterTable
ALTER TABLE "packet_share" ADD COLUMN     "purpose" TEXT NOT NULL DEFAULT 'mail',
ADD COLUMN     "sha256" TEXT NOT NULL DEFAULT '';

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

-- The words these columns know, as the code knows them.
ALTER TABLE packet DROP CONSTRAINT packet_kind_check;
ALTER TABLE packet ADD CONSTRAINT packet_kind_check CHECK (kind IN ('homeowner', 'crew', 'file', 'review'));
ALTER TABLE packet ADD CONSTRAINT packet_language_check CHECK (language IN ('en', 'es'));
ALTER TABLE packet ADD CONSTRAINT packet_paper_check CHECK (paper IN ('letter', 'a4'));
ALTER TABLE packet_share ADD CONSTRAINT packet_share_purpose_check CHECK (purpose IN ('mail', 'code'));
ALTER TABLE brand ADD CONSTRAINT brand_paper_check CHECK (paper IN ('letter', 'a4'));
ALTER TABLE brand ADD CONSTRAINT brand_cover_style_check CHECK (cover_style IN ('ledger', 'band'));
ALTER TABLE brand ADD CONSTRAINT brand_terms_check
  CHECK (parts_warranty_years BETWEEN 1 AND 50 AND labor_warranty_years BETWEEN 1 AND 50
    AND maintenance_months BETWEEN 1 AND 60);
