-- As before, and with a queue of the company's own: work of one queue is done one after the other, so that addresses that
-- do not answer hold one place of the worker and not all of them.
DROP FUNCTION enqueue_work(text, jsonb, text, timestamptz, integer);
CREATE FUNCTION enqueue_work(task text, payload jsonb, key text DEFAULT NULL, run_at timestamptz DEFAULT NULL,
  max_attempts integer DEFAULT NULL, queue text DEFAULT NULL)
RETURNS void LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
DECLARE
  company text := nullif(current_setting('app.tenant', true), '');
BEGIN
  IF company IS NULL THEN RAISE EXCEPTION 'no company is set' USING ERRCODE = '42501'; END IF;
  PERFORM graphile_worker.add_job(task,
    payload => (payload || jsonb_build_object('tenantId', company))::json,
    queue_name => company || ':' || queue,
    run_at => enqueue_work.run_at,
    job_key => company || ':' || key,
    max_attempts => enqueue_work.max_attempts);
END $$;

REVOKE ALL ON FUNCTION enqueue_work FROM PUBLIC;
GRANT EXECUTE ON FUNCTION enqueue_work TO app_user;
