-- What Prisma's schema cannot say: words, grants, triggers, and the reads that cross companies.

-- 1 Words -------------------------------------------------------------------------------------------

ALTER TABLE "user" ADD CONSTRAINT user_email_check CHECK (email = lower(email) AND email LIKE '%_@_%');
ALTER TABLE membership ADD CONSTRAINT membership_email_check CHECK (email = lower(email));
ALTER TABLE membership ADD CONSTRAINT membership_role_check CHECK (role IN ('owner', 'office', 'tech'));
ALTER TABLE invitation ADD CONSTRAINT invitation_email_check CHECK (email = lower(email));
ALTER TABLE invitation ADD CONSTRAINT invitation_role_check CHECK (role IN ('owner', 'office', 'tech'));
ALTER TABLE brand ADD CONSTRAINT brand_accent_color_check CHECK (accent_color ~ '^#[0-9a-f]{6}$');
ALTER TABLE job ADD CONSTRAINT job_number_check CHECK (number > 0);
ALTER TABLE job ADD CONSTRAINT job_state_check CHECK (state IN ('open', 'closed', 'cancelled'));
ALTER TABLE stage_record ADD CONSTRAINT stage_record_state_check
  CHECK (state IN ('draft', 'signed', 'superseded'));
ALTER TABLE stage_record ADD CONSTRAINT stage_record_signature_check CHECK (
  (state = 'draft' AND signed_by IS NULL AND signed_at IS NULL AND signature_name IS NULL)
  OR (state <> 'draft' AND signed_by IS NOT NULL AND signed_at IS NOT NULL AND signature_name IS NOT NULL));
ALTER TABLE stage_record ADD CONSTRAINT stage_record_revision_check
  CHECK (revision >= 1 AND (revision = 1 OR reopen_reason IS NOT NULL));
ALTER TABLE equipment_model ADD CONSTRAINT equipment_model_compressor_kind_check
  CHECK (compressor_kind IN ('single_speed', 'two_stage', 'variable_speed', 'coil_temperature_held'));
ALTER TABLE performance_point ADD CONSTRAINT performance_point_mode_check CHECK (mode IN ('cooling', 'heating'));
ALTER TABLE callback ADD CONSTRAINT callback_state_check CHECK (state IN ('open', 'fixed', 'closed'));
ALTER TABLE callback ADD CONSTRAINT callback_outcome_check CHECK (outcome IN ('worked', 'partly', 'did_not_work'));
ALTER TABLE packet ADD CONSTRAINT packet_kind_check CHECK (kind IN ('homeowner', 'crew', 'file'));
ALTER TABLE activity ADD CONSTRAINT activity_via_check CHECK (via IN ('user', 'token', 'system'));

-- The same words in several tables: stages, verdicts, background work, hashes.
DO $$
DECLARE
  one record;
BEGIN
  FOR one IN
    SELECT table_name, column_name, CASE
        WHEN column_name LIKE '%verdict' THEN
          '%I IN (''meets'', ''falls short'', ''can''''t tell'', ''not measured'')'
        WHEN column_name LIKE '%sha256' THEN '%I ~ ''^[0-9a-f]{64}$'''
        WHEN column_name LIKE '%stage' THEN '%I IN (''load_summary'', ''equipment_selection'','
          ' ''airflow_setup'', ''control_setup'', ''startup_record'', ''humidity_review'')'
        WHEN column_name = 'state' THEN '%I IN (''waiting'', ''running'', ''done'', ''failed'')'
      END AS rule
    FROM information_schema.columns
    WHERE table_schema = 'public' AND data_type = 'text'
      AND (column_name LIKE '%verdict' OR column_name LIKE '%sha256' OR column_name IN ('stage', 'current_stage')
        OR (column_name = 'state'
          AND table_name IN ('forecast', 'log_import', 'webhook_delivery', 'company_export')))
  LOOP
    EXECUTE format('ALTER TABLE %I ADD CONSTRAINT %I CHECK (' || one.rule || ')',
      one.table_name, one.table_name || '_' || one.column_name || '_check', one.column_name);
  END LOOP;
END $$;

-- Every channel of a day holds one float64 a sample.
DO $$
DECLARE
  lengths text;
BEGIN
  SELECT string_agg(format('octet_length(%I) = 8 * samples', column_name), ' AND ') INTO lengths
    FROM information_schema.columns
    WHERE table_schema = 'public' AND table_name = 'log_day' AND data_type = 'bytea';
  EXECUTE 'ALTER TABLE log_day ADD CONSTRAINT log_day_length_check CHECK (samples > 0 AND ' || lengths || ')';
END $$;

-- 2 Numbers of a company ------------------------------------------------------------------------------

CREATE FUNCTION job_take_number() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  IF NEW.number = 0 THEN
    INSERT INTO tenant_counter AS counter (tenant_id, last_job_number) VALUES (NEW.tenant_id, 1)
      ON CONFLICT (tenant_id) DO UPDATE SET last_job_number = counter.last_job_number + 1
      RETURNING last_job_number INTO NEW.number;
  END IF;
  RETURN NEW;
END $$;

-- Triggers of one kind run in the order of their names: the number is needed for the search text.
CREATE TRIGGER job_1_take_number BEFORE INSERT ON job FOR EACH ROW EXECUTE FUNCTION job_take_number();

-- 3 Search --------------------------------------------------------------------------------------------

CREATE FUNCTION job_search_text(company uuid, number integer, title text, customer uuid, home uuid)
RETURNS text LANGUAGE sql STABLE SET search_path = pg_catalog, public AS $$
  SELECT lower(regexp_replace(concat_ws(' ', number, title, c.name, c.contact_name, c.phone, c.email,
      h.address_line, h.address_line_2, h.city, h.region, h.postal_code), '\s+', ' ', 'g'))
    FROM customer c JOIN home h ON h.tenant_id = c.tenant_id
    WHERE c.tenant_id = company AND c.id = customer AND h.id = home
$$;

CREATE FUNCTION job_write_search_text() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  -- A missing customer or home leaves '' here and is then refused by its foreign key.
  NEW.search_text := coalesce(
    job_search_text(NEW.tenant_id, NEW.number, NEW.title, NEW.customer_id, NEW.home_id), '');
  RETURN NEW;
END $$;

CREATE TRIGGER job_2_write_search_text BEFORE INSERT OR UPDATE OF number, title, customer_id, home_id, search_text
  ON job FOR EACH ROW EXECUTE FUNCTION job_write_search_text();

CREATE FUNCTION job_follow_names() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  IF TG_TABLE_NAME = 'customer' THEN
    UPDATE job SET search_text = '' WHERE tenant_id = NEW.tenant_id AND customer_id = NEW.id;
  ELSE
    UPDATE job SET search_text = '' WHERE tenant_id = NEW.tenant_id AND home_id = NEW.id;
  END IF;
  RETURN NULL;
END $$;

CREATE TRIGGER customer_rename AFTER UPDATE OF name, contact_name, phone, email ON customer
  FOR EACH ROW EXECUTE FUNCTION job_follow_names();
CREATE TRIGGER home_move AFTER UPDATE OF address_line, address_line_2, city, region, postal_code ON home
  FOR EACH ROW EXECUTE FUNCTION job_follow_names();

-- Under row-level security PostgreSQL may not use an index for LIKE, which is not leakproof: every search
-- would read all jobs of the company. This function reads as app_search, whose policy adds no condition, and
-- therefore names the company itself, from the same setting as the policies. It answers only numbers.
CREATE FUNCTION search_jobs(
  words text[],
  only_state text DEFAULT NULL,
  only_stage text DEFAULT NULL,
  only_verdict text DEFAULT NULL,
  only_attention boolean DEFAULT NULL,
  only_assigned_to uuid DEFAULT NULL,
  before_number integer DEFAULT NULL,
  at_most integer DEFAULT 50
) RETURNS TABLE (number integer)
LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
DECLARE
  company uuid := nullif(current_setting('app.tenant', true), '')::uuid;
  word text;
  -- Built as text so that each search is planned for its own words.
  query text := 'SELECT j.number FROM job j WHERE j.tenant_id = $1';
BEGIN
  IF company IS NULL THEN RETURN; END IF;
  FOREACH word IN ARRAY words LOOP
    query := query || format(' AND j.search_text LIKE %L',
      '%' || replace(replace(replace(lower(word), '\', '\\'), '%', '\%'), '_', '\_') || '%');
  END LOOP;
  IF only_state IS NOT NULL THEN query := query || ' AND j.state = $2'; END IF;
  IF only_stage IS NOT NULL THEN query := query || ' AND j.current_stage = $3'; END IF;
  IF only_verdict IS NOT NULL THEN query := query || ' AND j.verdict = $4'; END IF;
  IF only_attention IS NOT NULL THEN query := query || ' AND j.needs_attention = $5'; END IF;
  IF only_assigned_to IS NOT NULL THEN
    query := query || ' AND EXISTS (SELECT FROM job_assignment a'
      ' WHERE a.tenant_id = j.tenant_id AND a.job_id = j.id AND a.user_id = $6)';
  END IF;
  IF before_number IS NOT NULL THEN query := query || ' AND j.number < $7'; END IF;
  RETURN QUERY EXECUTE query || ' ORDER BY j.number DESC LIMIT $8'
    USING company, only_state, only_stage, only_verdict, only_attention, only_assigned_to, before_number, at_most;
END $$;

GRANT SELECT (tenant_id, id, number, search_text, state, current_stage, verdict, needs_attention) ON job TO app_search;
GRANT SELECT (tenant_id, job_id, user_id) ON job_assignment TO app_search;
CREATE POLICY search_reads ON job FOR SELECT TO app_search USING (true);
CREATE POLICY search_reads ON job_assignment FOR SELECT TO app_search USING (true);
REVOKE ALL ON FUNCTION search_jobs FROM PUBLIC;
GRANT EXECUTE ON FUNCTION search_jobs TO app_user;
GRANT CREATE ON SCHEMA public TO app_search;
ALTER FUNCTION search_jobs OWNER TO app_search;
REVOKE CREATE ON SCHEMA public FROM app_search;

-- 4 What is signed stays ------------------------------------------------------------------------------

CREATE FUNCTION stage_record_keep_signed() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
DECLARE
  may_change text[] := ARRAY['state', 'version', 'updated_at', 'updated_by'];
BEGIN
  IF TG_OP = 'DELETE' THEN
    IF OLD.state = 'draft' OR current_user = 'app_eraser' THEN RETURN OLD; END IF;
    RAISE EXCEPTION 'a signed stage record is never deleted' USING ERRCODE = 'DW001';
  END IF;
  IF (NEW.tenant_id, NEW.id, NEW.job_id, NEW.stage, NEW.revision)
    IS DISTINCT FROM (OLD.tenant_id, OLD.id, OLD.job_id, OLD.stage, OLD.revision) THEN
    RAISE EXCEPTION 'a stage record never changes its place' USING ERRCODE = 'DW001';
  END IF;
  IF OLD.state = 'draft' AND NEW.state IN ('draft', 'signed') THEN RETURN NEW; END IF;
  IF OLD.state = 'signed' AND NEW.state = 'superseded'
    AND to_jsonb(NEW) - may_change = to_jsonb(OLD) - may_change THEN RETURN NEW; END IF;
  RAISE EXCEPTION 'a signed stage record is never changed; reopen it as a new revision' USING ERRCODE = 'DW001';
END $$;

CREATE TRIGGER stage_record_keep_signed BEFORE UPDATE OR DELETE ON stage_record
  FOR EACH ROW EXECUTE FUNCTION stage_record_keep_signed();

-- History and finished things: written once.
REVOKE UPDATE, DELETE ON activity, rule_limits, performance_point, fan_point FROM app_user;
REVOKE UPDATE, DELETE ON packet, sync_receipt FROM app_user;
REVOKE DELETE ON membership, tenant_counter, packet_share, log_import FROM app_user;
REVOKE UPDATE, DELETE ON equipment_model, control_model FROM app_user;
GRANT UPDATE (retired_at) ON equipment_model, control_model TO app_user;

-- 5 The trail -----------------------------------------------------------------------------------------

-- The text of a JSON array is the same for the same values, and no value can imitate a separator.
CREATE FUNCTION activity_hash(previous text, entry activity) RETURNS text
LANGUAGE sql STABLE SET search_path = pg_catalog, public AS $$
  SELECT encode(sha256(convert_to(jsonb_build_array(
    previous, entry.tenant_id, entry.seq, entry.id, (extract(epoch FROM entry.at) * 1000000)::bigint,
    entry.actor_id, entry.via, entry.action, entry.entity, entry.entity_id, entry.job_id,
    entry.before, entry.after, entry.reason)::text, 'UTF8')), 'hex')
$$;

CREATE FUNCTION activity_chain() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  -- The locked counter row makes writers of one company wait for each other: the chain cannot fork.
  INSERT INTO tenant_counter AS counter (tenant_id, last_activity_seq) VALUES (NEW.tenant_id, 1)
    ON CONFLICT (tenant_id) DO UPDATE SET last_activity_seq = counter.last_activity_seq + 1
    RETURNING last_activity_seq, last_activity_hash INTO NEW.seq, NEW.previous_hash;
  NEW.hash := activity_hash(NEW.previous_hash, NEW);
  UPDATE tenant_counter SET last_activity_hash = NEW.hash WHERE tenant_id = NEW.tenant_id;
  RETURN NEW;
END $$;

CREATE TRIGGER activity_chain BEFORE INSERT ON activity FOR EACH ROW EXECUTE FUNCTION activity_chain();

CREATE FUNCTION activity_append_only() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public AS $$
BEGIN
  IF TG_OP = 'DELETE' AND current_user = 'app_eraser' THEN RETURN OLD; END IF;
  RAISE EXCEPTION 'the trail is append-only' USING ERRCODE = 'DW002';
END $$;

CREATE TRIGGER activity_append_only BEFORE UPDATE OR DELETE ON activity
  FOR EACH ROW EXECUTE FUNCTION activity_append_only();
CREATE TRIGGER activity_never_truncated BEFORE TRUNCATE ON activity
  FOR EACH STATEMENT EXECUTE FUNCTION activity_append_only();

-- The first entry of this company's trail that does not follow from the one before; null when all do.
CREATE FUNCTION activity_first_broken_seq() RETURNS bigint
LANGUAGE sql STABLE SET search_path = pg_catalog, public AS $$
  WITH chained AS (
    SELECT entry AS row, entry.seq, entry.hash, entry.previous_hash,
      lag(entry.seq, 1, 0::bigint) OVER (ORDER BY entry.seq) AS seq_before,
      lag(entry.hash, 1, '') OVER (ORDER BY entry.seq) AS hash_before
    FROM activity entry
    WHERE tenant_id = nullif(current_setting('app.tenant', true), '')::uuid
  ), broken AS (
    SELECT seq FROM chained
    WHERE seq <> seq_before + 1 OR previous_hash <> hash_before OR hash <> activity_hash(hash_before, row)
    UNION ALL
    SELECT counter.last_activity_seq FROM tenant_counter counter
    WHERE counter.tenant_id = nullif(current_setting('app.tenant', true), '')::uuid
      AND (counter.last_activity_seq <> (SELECT coalesce(max(seq), 0) FROM chained)
        OR counter.last_activity_hash <> coalesce((SELECT hash FROM chained ORDER BY seq DESC LIMIT 1), ''))
  )
  SELECT min(seq) FROM broken
$$;

-- 6 The company's own row -----------------------------------------------------------------------------

ALTER TABLE tenant ENABLE ROW LEVEL SECURITY;
ALTER TABLE tenant FORCE ROW LEVEL SECURITY;
CREATE POLICY own_company ON tenant TO app_user, app_eraser
  USING (id = nullif(current_setting('app.tenant', true), '')::uuid)
  WITH CHECK (id = nullif(current_setting('app.tenant', true), '')::uuid);
GRANT SELECT, UPDATE (name, time_zone, closed_at) ON tenant TO app_user;
GRANT SELECT, DELETE ON tenant TO app_eraser;

-- 7 Before a company is known -------------------------------------------------------------------------

GRANT SELECT, INSERT, UPDATE ON "user", password_reset TO app_unscoped;
GRANT SELECT, INSERT, UPDATE, DELETE ON rate_limit TO app_unscoped;

-- Sign-in, switching company, making one.
GRANT SELECT, INSERT ON tenant TO app_unscoped;
CREATE POLICY unscoped_reads ON tenant FOR SELECT TO app_unscoped USING (true);
CREATE POLICY unscoped_adds ON tenant FOR INSERT TO app_unscoped WITH CHECK (true);
GRANT SELECT, INSERT, UPDATE (name, email, role, version, removed_at, updated_at) ON membership TO app_unscoped;
CREATE POLICY unscoped_reads ON membership FOR SELECT TO app_unscoped USING (true);
CREATE POLICY unscoped_adds ON membership FOR INSERT TO app_unscoped WITH CHECK (true);
CREATE POLICY unscoped_changes ON membership FOR UPDATE TO app_unscoped USING (true) WITH CHECK (true);

-- Links and tokens that carry their own proof.
GRANT SELECT, UPDATE (accepted_at) ON invitation TO app_unscoped;
CREATE POLICY unscoped_reads ON invitation FOR SELECT TO app_unscoped USING (true);
CREATE POLICY unscoped_changes ON invitation FOR UPDATE TO app_unscoped USING (true) WITH CHECK (true);
GRANT SELECT, UPDATE (last_used_at) ON api_token TO app_unscoped;
CREATE POLICY unscoped_reads ON api_token FOR SELECT TO app_unscoped USING (true);
CREATE POLICY unscoped_changes ON api_token FOR UPDATE TO app_unscoped USING (true) WITH CHECK (true);
GRANT SELECT, UPDATE (first_opened_at, last_opened_at, open_count) ON packet_share TO app_unscoped;
CREATE POLICY unscoped_reads ON packet_share FOR SELECT TO app_unscoped USING (true);
CREATE POLICY unscoped_changes ON packet_share FOR UPDATE TO app_unscoped USING (true) WITH CHECK (true);
GRANT SELECT ON packet, brand TO app_unscoped;
CREATE POLICY unscoped_reads ON packet FOR SELECT TO app_unscoped USING (true);
CREATE POLICY unscoped_reads ON brand FOR SELECT TO app_unscoped USING (true);

-- 8 Background work -----------------------------------------------------------------------------------

-- Adds work inside the transaction that needs it. The company is stamped here, never taken from the caller.
-- It runs as the owner, who owns the queue's tables.
CREATE FUNCTION enqueue_work(task text, payload jsonb, key text DEFAULT NULL, run_at timestamptz DEFAULT NULL)
RETURNS void LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
DECLARE
  company text := nullif(current_setting('app.tenant', true), '');
BEGIN
  IF company IS NULL THEN RAISE EXCEPTION 'no company is set' USING ERRCODE = '42501'; END IF;
  PERFORM graphile_worker.add_job(task,
    payload => (payload || jsonb_build_object('tenantId', company))::json,
    run_at => enqueue_work.run_at,
    job_key => company || ':' || key);
END $$;

REVOKE ALL ON FUNCTION enqueue_work FROM PUBLIC;
GRANT EXECUTE ON FUNCTION enqueue_work TO app_user;
