-- Guards every table of a company that has no guard yet. new-migration.ts ends each migration that
-- creates tables with this; it may be repeated.
DO $$
DECLARE
  guarded text;
  numbers text;
BEGIN
  FOR guarded IN
    SELECT c.relname FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relrowsecurity
      AND a.attname = 'tenant_id' AND NOT a.attisdropped
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', guarded);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', guarded);
    EXECUTE format(
      'CREATE POLICY own_company ON %I TO app_user, app_eraser'
      ' USING (tenant_id = nullif(current_setting(''app.tenant'', true), '''')::uuid)'
      ' WITH CHECK (tenant_id = nullif(current_setting(''app.tenant'', true), '''')::uuid)', guarded);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO app_user', guarded);
    EXECUTE format('GRANT SELECT, DELETE ON %I TO app_eraser', guarded);

    -- NaN counts as greater than Infinity, so this keeps it out as well.
    SELECT string_agg(format('%1$I > ''-Infinity'' AND %1$I < ''Infinity''', column_name), ' AND ')
      INTO numbers FROM information_schema.columns
      WHERE table_schema = 'public' AND table_name = guarded AND data_type = 'double precision';
    IF numbers IS NOT NULL THEN
      EXECUTE format('ALTER TABLE %I ADD CONSTRAINT %I CHECK (%s)', guarded, guarded || '_finite_check', numbers);
    END IF;
  END LOOP;
END $$;
