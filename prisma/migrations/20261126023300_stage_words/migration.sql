-- The stage a file or a held value belongs to is one of the six, as everywhere.
DO $$
DECLARE
  one text;
BEGIN
  FOREACH one IN ARRAY ARRAY['attachment', 'held_value'] LOOP
    EXECUTE format('ALTER TABLE %I ADD CONSTRAINT %I CHECK (stage IN (''load_summary'', ''equipment_selection'','
      ' ''airflow_setup'', ''control_setup'', ''startup_record'', ''humidity_review''))', one, one || '_stage_check');
  END LOOP;
END $$;
