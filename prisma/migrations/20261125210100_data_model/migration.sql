-- CreateTable
CREATE TABLE "tenant" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "closed_at" TIMESTAMPTZ(3),

    CONSTRAINT "tenant_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "user" (
    "id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "password_hash" TEXT NOT NULL,
    "session_version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "user_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "password_reset" (
    "id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "password_reset_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "key" TEXT NOT NULL,
    "points" INTEGER NOT NULL,
    "expire" TIMESTAMPTZ(3),

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "membership" (
    "tenant_id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "phone" TEXT,
    "role" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "removed_at" TIMESTAMPTZ(3),

    CONSTRAINT "membership_pkey" PRIMARY KEY ("tenant_id","user_id")
);

-- CreateTable
CREATE TABLE "invitation" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "accepted_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "invitation_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "tenant_counter" (
    "tenant_id" UUID NOT NULL,
    "last_job_number" INTEGER NOT NULL DEFAULT 0,
    "last_activity_seq" BIGINT NOT NULL DEFAULT 0,
    "last_activity_hash" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "tenant_counter_pkey" PRIMARY KEY ("tenant_id")
);

-- CreateTable
CREATE TABLE "brand" (
    "tenant_id" UUID NOT NULL,
    "display_name" TEXT NOT NULL,
    "license_line" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "website" TEXT NOT NULL DEFAULT '',
    "address_lines" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "accent_color" TEXT NOT NULL,
    "logo_storage_key" TEXT,
    "logo_mime" TEXT,
    "logo_sha256" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "brand_pkey" PRIMARY KEY ("tenant_id")
);

-- CreateTable
CREATE TABLE "rule_limits" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "values" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "rule_limits_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "customer" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "contact_name" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "archived_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "customer_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "home" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "address_line" TEXT NOT NULL,
    "address_line_2" TEXT NOT NULL DEFAULT '',
    "city" TEXT NOT NULL,
    "region" TEXT NOT NULL,
    "postal_code" TEXT NOT NULL,
    "latitude" DOUBLE PRECISION,
    "longitude" DOUBLE PRECISION,
    "elevation_ft" DOUBLE PRECISION,
    "climate_zone" TEXT,
    "floor_area_ft2" DOUBLE PRECISION,
    "volume_ft3" DOUBLE PRECISION,
    "bedrooms" INTEGER,
    "storeys" INTEGER,
    "leakage_cfm50" DOUBLE PRECISION,
    "leakage_measured" BOOLEAN,
    "details" JSONB NOT NULL DEFAULT '{}',
    "archived_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "home_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "job" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "number" INTEGER NOT NULL DEFAULT 0,
    "customer_id" UUID NOT NULL,
    "home_id" UUID NOT NULL,
    "title" TEXT NOT NULL DEFAULT '',
    "state" TEXT NOT NULL DEFAULT 'open',
    "current_stage" TEXT,
    "verdict" TEXT,
    "needs_attention" BOOLEAN NOT NULL DEFAULT false,
    "attention" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "startup_due" DATE,
    "review_due" DATE,
    "weather_file_id" UUID,
    "chosen_option_id" UUID,
    "humidity_limit_pct" DOUBLE PRECISION,
    "note" TEXT NOT NULL DEFAULT '',
    "search_text" TEXT NOT NULL DEFAULT '',
    "closed_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "job_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "job_assignment" (
    "tenant_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "visit_on" DATE,
    "assigned_by" UUID NOT NULL,
    "assigned_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "job_assignment_pkey" PRIMARY KEY ("tenant_id","job_id","user_id")
);

-- CreateTable
CREATE TABLE "stage_record" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "stage" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "schema_version" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'draft',
    "inputs" JSONB NOT NULL,
    "provenance" JSONB NOT NULL DEFAULT '{}',
    "findings" JSONB NOT NULL DEFAULT '[]',
    "engine_version" TEXT NOT NULL,
    "verdict" TEXT,
    "signed_by" UUID,
    "signed_at" TIMESTAMPTZ(3),
    "signature_name" TEXT,
    "reopen_reason" TEXT,
    "client_id" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "stage_record_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "job_fact" (
    "tenant_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "startup_signed_on" DATE,
    "startup_month" INTEGER,
    "tech_id" UUID,
    "elevation_ft" DOUBLE PRECISION,
    "climate_zone" TEXT,
    "floor_area_ft2" DOUBLE PRECISION,
    "equipment_model_id" UUID,
    "equipment_family_id" UUID,
    "compressor_kind" TEXT,
    "nominal_tons" DOUBLE PRECISION,
    "control_model_id" UUID,
    "capacity_setting" TEXT,
    "capacity_adjusted_by_board" BOOLEAN,
    "colder_coil_cooling" BOOLEAN,
    "first_stage_airflow_setting" TEXT,
    "second_stage_airflow_setting" TEXT,
    "first_stage_start_offset_f" DOUBLE PRECISION,
    "second_stage_start_offset_f" DOUBLE PRECISION,
    "minimum_compressor_run_min" DOUBLE PRECISION,
    "minimum_compressor_rest_min" DOUBLE PRECISION,
    "step_back_to_first_stage" BOOLEAN,
    "fan_run_on_seconds" DOUBLE PRECISION,
    "cooling_past_setpoint_f" DOUBLE PRECISION,
    "indoor_temperature_correction_f" DOUBLE PRECISION,
    "indoor_humidity_correction_pct" DOUBLE PRECISION,
    "fan_between_calls" TEXT,
    "fan_minutes_per_hour" DOUBLE PRECISION,
    "supplemental_dehumidifier" BOOLEAN,
    "ventilation_cfm" DOUBLE PRECISION,
    "load_total_btuh" DOUBLE PRECISION,
    "load_sensible_btuh" DOUBLE PRECISION,
    "load_latent_btuh" DOUBLE PRECISION,
    "size_ratio" DOUBLE PRECISION,
    "first_stage_cfm_per_ton" DOUBLE PRECISION,
    "second_stage_cfm_per_ton" DOUBLE PRECISION,
    "external_static_in_wc" DOUBLE PRECISION,
    "fan_watts_per_cfm" DOUBLE PRECISION,
    "total_capacity_btuh" DOUBLE PRECISION,
    "sensible_capacity_btuh" DOUBLE PRECISION,
    "latent_capacity_btuh" DOUBLE PRECISION,
    "sensible_ratio" DOUBLE PRECISION,
    "moisture_removal_lb_per_h" DOUBLE PRECISION,
    "superheat_f" DOUBLE PRECISION,
    "subcooling_f" DOUBLE PRECISION,
    "forecast_dry_hours" DOUBLE PRECISION,
    "lived_dry_hours" DOUBLE PRECISION,
    "lived_logged_hours" DOUBLE PRECISION,
    "share_between_50_and_60_pct" DOUBLE PRECISION,
    "share_above_limit_pct" DOUBLE PRECISION,
    "median_indoor_dew_point_f" DOUBLE PRECISION,
    "cycles_per_hour" DOUBLE PRECISION,
    "second_stage_share_pct" DOUBLE PRECISION,
    "measured_size_ratio" DOUBLE PRECISION,
    "load_summary_verdict" TEXT,
    "equipment_selection_verdict" TEXT,
    "airflow_setup_verdict" TEXT,
    "control_setup_verdict" TEXT,
    "startup_record_verdict" TEXT,
    "humidity_review_verdict" TEXT,
    "verdict" TEXT,
    "callback_count" INTEGER NOT NULL DEFAULT 0,
    "open_callback_count" INTEGER NOT NULL DEFAULT 0,
    "humidity_complaint_count" INTEGER NOT NULL DEFAULT 0,
    "engine_version" TEXT NOT NULL,
    "rebuilt_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "job_fact_pkey" PRIMARY KEY ("tenant_id","job_id")
);

-- CreateTable
CREATE TABLE "ledger_line" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "line_key" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "designed" DOUBLE PRECISION,
    "set" DOUBLE PRECISION,
    "measured" DOUBLE PRECISION,
    "lived" DOUBLE PRECISION,
    "measured_uncertainty" DOUBLE PRECISION,
    "lived_uncertainty" DOUBLE PRECISION,
    "verdict" TEXT,
    "evidence" JSONB NOT NULL DEFAULT '{}',
    "engine_version" TEXT NOT NULL,
    "rebuilt_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ledger_line_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "option" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "label" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "equipment_model_id" UUID,
    "control_model_id" UUID,
    "inputs" JSONB NOT NULL,
    "schema_version" INTEGER NOT NULL,
    "inputs_hash" TEXT NOT NULL,
    "archived_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "option_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "forecast" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "option_id" UUID NOT NULL,
    "weather_file_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "inputs_hash" TEXT NOT NULL,
    "weather_sha256" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "dry_hours" DOUBLE PRECISION,
    "hours_above_limit" DOUBLE PRECISION,
    "cooling_kwh" DOUBLE PRECISION,
    "heating_kwh" DOUBLE PRECISION,
    "compressor_starts" DOUBLE PRECISION,
    "compressor_hours" DOUBLE PRECISION,
    "result" JSONB,
    "problem" TEXT,
    "started_at" TIMESTAMPTZ(3),
    "finished_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "forecast_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "weather_file" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "source_note" TEXT NOT NULL,
    "latitude" DOUBLE PRECISION NOT NULL,
    "longitude" DOUBLE PRECISION NOT NULL,
    "elevation_ft" DOUBLE PRECISION NOT NULL,
    "utc_offset_hours" DOUBLE PRECISION NOT NULL,
    "hours" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "size_bytes" INTEGER NOT NULL,
    "storage_key" TEXT NOT NULL,
    "design_values" JSONB NOT NULL DEFAULT '{}',
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "weather_file_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "equipment_model" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "family_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "maker" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "model_number" TEXT NOT NULL DEFAULT '',
    "compressor_kind" TEXT NOT NULL,
    "nominal_tons" DOUBLE PRECISION NOT NULL,
    "refrigerant" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "schema_version" INTEGER NOT NULL,
    "source_note" TEXT NOT NULL DEFAULT '',
    "demo_data" BOOLEAN NOT NULL DEFAULT false,
    "retired_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "equipment_model_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "performance_point" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "capacity_setting" TEXT NOT NULL,
    "outdoor_db_f" DOUBLE PRECISION NOT NULL,
    "entering_wb_f" DOUBLE PRECISION,
    "entering_db_f" DOUBLE PRECISION NOT NULL,
    "airflow_cfm" DOUBLE PRECISION NOT NULL,
    "total_btuh" DOUBLE PRECISION NOT NULL,
    "sensible_btuh" DOUBLE PRECISION,
    "power_w" DOUBLE PRECISION,
    "mode" TEXT NOT NULL DEFAULT 'cooling',

    CONSTRAINT "performance_point_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "fan_point" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "airflow_setting" TEXT NOT NULL,
    "external_static_in_wc" DOUBLE PRECISION NOT NULL,
    "airflow_cfm" DOUBLE PRECISION NOT NULL,
    "power_w" DOUBLE PRECISION,

    CONSTRAINT "fan_point_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "control_model" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "family_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "maker" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "schema_version" INTEGER NOT NULL,
    "demo_data" BOOLEAN NOT NULL DEFAULT false,
    "retired_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "control_model_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "instrument" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "serial_number" TEXT NOT NULL DEFAULT '',
    "accuracy" JSONB NOT NULL,
    "calibrated_on" DATE,
    "calibration_due_on" DATE,
    "holder_id" UUID,
    "retired_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "instrument_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "log_source" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "header_fingerprint" TEXT NOT NULL,
    "mapping" JSONB NOT NULL,
    "time_zone" TEXT NOT NULL,
    "schema_version" INTEGER NOT NULL,
    "last_used_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "log_source_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "log_import" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "source_id" UUID NOT NULL,
    "file_name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "size_bytes" INTEGER NOT NULL,
    "storage_key" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "rows_read" INTEGER NOT NULL DEFAULT 0,
    "rows_kept" INTEGER NOT NULL DEFAULT 0,
    "problems" JSONB NOT NULL DEFAULT '[]',
    "first_at" TIMESTAMPTZ(3),
    "last_at" TIMESTAMPTZ(3),
    "finished_at" TIMESTAMPTZ(3),
    "client_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "log_import_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "log_day" (
    "tenant_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "source_id" UUID NOT NULL,
    "day" DATE NOT NULL,
    "import_id" UUID NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "time_zone" TEXT NOT NULL,
    "samples" INTEGER NOT NULL,
    "offset_minutes" BYTEA NOT NULL,
    "step_minutes" BYTEA,
    "indoor_db_f" BYTEA,
    "indoor_rh_pct" BYTEA,
    "outdoor_db_f" BYTEA,
    "outdoor_rh_pct" BYTEA,
    "setpoint_f" BYTEA,
    "first_stage_fraction" BYTEA,
    "second_stage_fraction" BYTEA,
    "heating_fraction" BYTEA,
    "auxiliary_fraction" BYTEA,
    "fan_fraction" BYTEA,
    "dehumidifier_fraction" BYTEA,

    CONSTRAINT "log_day_pkey" PRIMARY KEY ("tenant_id","job_id","source_id","day")
);

-- CreateTable
CREATE TABLE "callback" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "reported_on" DATE NOT NULL,
    "reported_by_name" TEXT NOT NULL DEFAULT '',
    "complaint" TEXT NOT NULL,
    "humidity_complaint" BOOLEAN NOT NULL,
    "cause" TEXT NOT NULL DEFAULT '',
    "cause_rule_id" TEXT,
    "evidence" JSONB NOT NULL DEFAULT '{}',
    "fix" TEXT NOT NULL DEFAULT '',
    "fixed_on" DATE,
    "outcome" TEXT,
    "outcome_note" TEXT NOT NULL DEFAULT '',
    "outcome_checked_on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "callback_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "attachment" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID,
    "stage_record_id" UUID,
    "callback_id" UUID,
    "field_path" TEXT,
    "file_name" TEXT NOT NULL,
    "mime" TEXT NOT NULL,
    "size_bytes" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "storage_key" TEXT NOT NULL,
    "width_px" INTEGER,
    "height_px" INTEGER,
    "caption" TEXT NOT NULL DEFAULT '',
    "taken_at" TIMESTAMPTZ(3),
    "latitude" DOUBLE PRECISION,
    "longitude" DOUBLE PRECISION,
    "client_id" UUID,
    "removed_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "attachment_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "packet" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "inputs_hash" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "size_bytes" INTEGER NOT NULL,
    "pages" INTEGER NOT NULL,
    "storage_key" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "packet_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "packet_share" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "packet_id" UUID NOT NULL,
    "sent_to" TEXT NOT NULL,
    "message" TEXT NOT NULL DEFAULT '',
    "token_hash" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),
    "sent_at" TIMESTAMPTZ(3),
    "first_opened_at" TIMESTAMPTZ(3),
    "last_opened_at" TIMESTAMPTZ(3),
    "open_count" INTEGER NOT NULL DEFAULT 0,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "packet_share_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "question" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "stage" TEXT,
    "field_path" TEXT,
    "text" TEXT NOT NULL,
    "asked_of_id" UUID,
    "answer" TEXT,
    "answered_by" UUID,
    "answered_at" TIMESTAMPTZ(3),
    "closed_at" TIMESTAMPTZ(3),
    "client_id" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "question_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "activity" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "seq" BIGINT NOT NULL DEFAULT 0,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "actor_id" UUID,
    "via" TEXT NOT NULL DEFAULT 'user',
    "action" TEXT NOT NULL,
    "entity" TEXT NOT NULL,
    "entity_id" UUID,
    "job_id" UUID,
    "before" JSONB,
    "after" JSONB,
    "reason" TEXT,
    "previous_hash" TEXT NOT NULL DEFAULT '',
    "hash" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "activity_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "saved_view" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "screen" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "query" JSONB NOT NULL,
    "shared" BOOLEAN NOT NULL DEFAULT false,
    "position" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "saved_view_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "api_token" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "hint" TEXT NOT NULL,
    "scopes" TEXT[],
    "expires_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),
    "last_used_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "api_token_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "webhook" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "url" TEXT NOT NULL,
    "events" TEXT[],
    "secret_sealed" TEXT NOT NULL,
    "paused_at" TIMESTAMPTZ(3),
    "removed_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_by" UUID NOT NULL,

    CONSTRAINT "webhook_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "webhook_delivery" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "webhook_id" UUID NOT NULL,
    "event" TEXT NOT NULL,
    "payload" JSONB NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "next_attempt_at" TIMESTAMPTZ(3),
    "response_status" INTEGER,
    "problem" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "delivered_at" TIMESTAMPTZ(3),

    CONSTRAINT "webhook_delivery_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateTable
CREATE TABLE "sync_receipt" (
    "tenant_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "request_hash" TEXT NOT NULL,
    "entity_id" UUID,
    "response" JSONB NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "sync_receipt_pkey" PRIMARY KEY ("tenant_id","client_id")
);

-- CreateTable
CREATE TABLE "company_export" (
    "tenant_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "storage_key" TEXT,
    "sha256" TEXT,
    "size_bytes" BIGINT,
    "problem" TEXT,
    "finished_at" TIMESTAMPTZ(3),
    "expires_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" UUID NOT NULL,

    CONSTRAINT "company_export_pkey" PRIMARY KEY ("tenant_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "user_email_key" ON "user"("email");

-- CreateIndex
CREATE UNIQUE INDEX "password_reset_token_hash_key" ON "password_reset"("token_hash");

-- CreateIndex
CREATE INDEX "password_reset_user_id_idx" ON "password_reset"("user_id");

-- CreateIndex
CREATE INDEX "rate_limit_expire_idx" ON "rate_limit"("expire");

-- CreateIndex
CREATE INDEX "membership_user_id_idx" ON "membership"("user_id");

-- CreateIndex
CREATE UNIQUE INDEX "membership_tenant_id_email_key" ON "membership"("tenant_id", "email");

-- CreateIndex
CREATE INDEX "invitation_tenant_id_email_idx" ON "invitation"("tenant_id", "email");

-- CreateIndex
CREATE UNIQUE INDEX "invitation_tenant_id_token_hash_key" ON "invitation"("tenant_id", "token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "rule_limits_tenant_id_revision_key" ON "rule_limits"("tenant_id", "revision");

-- CreateIndex
CREATE INDEX "customer_tenant_id_name_idx" ON "customer"("tenant_id", "name");

-- CreateIndex
CREATE INDEX "home_tenant_id_customer_id_idx" ON "home"("tenant_id", "customer_id");

-- CreateIndex
CREATE INDEX "job_tenant_id_customer_id_idx" ON "job"("tenant_id", "customer_id");

-- CreateIndex
CREATE INDEX "job_tenant_id_home_id_idx" ON "job"("tenant_id", "home_id");

-- CreateIndex
CREATE INDEX "job_tenant_id_chosen_option_id_idx" ON "job"("tenant_id", "chosen_option_id");

-- CreateIndex
CREATE INDEX "job_tenant_id_weather_file_id_idx" ON "job"("tenant_id", "weather_file_id");

-- CreateIndex
CREATE INDEX "job_tenant_id_state_number_idx" ON "job"("tenant_id", "state", "number" DESC);

-- CreateIndex
CREATE INDEX "job_tenant_id_current_stage_number_idx" ON "job"("tenant_id", "current_stage", "number" DESC);

-- CreateIndex
CREATE INDEX "job_tenant_id_verdict_number_idx" ON "job"("tenant_id", "verdict", "number" DESC);

-- CreateIndex
CREATE INDEX "job_tenant_id_startup_due_number_idx" ON "job"("tenant_id", "startup_due", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_review_due_number_idx" ON "job"("tenant_id", "review_due", "number");

-- CreateIndex
CREATE INDEX "job_tenant_id_updated_at_idx" ON "job"("tenant_id", "updated_at" DESC);

-- CreateIndex
CREATE INDEX "job_tenant_id_needs_attention_number_idx" ON "job"("tenant_id", "needs_attention", "number" DESC);

-- CreateIndex
CREATE INDEX "job_search_idx" ON "job" USING GIN ("tenant_id" uuid_ops, "search_text" gin_trgm_ops);

-- CreateIndex
CREATE UNIQUE INDEX "job_tenant_id_number_key" ON "job"("tenant_id", "number");

-- CreateIndex
CREATE INDEX "job_assignment_tenant_id_user_id_job_id_idx" ON "job_assignment"("tenant_id", "user_id", "job_id");

-- CreateIndex
CREATE INDEX "job_assignment_tenant_id_user_id_visit_on_idx" ON "job_assignment"("tenant_id", "user_id", "visit_on");

-- CreateIndex
CREATE UNIQUE INDEX "stage_record_tenant_id_job_id_stage_revision_key" ON "stage_record"("tenant_id", "job_id", "stage", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "stage_record_one_draft_key" ON "stage_record"("tenant_id", "job_id", "stage") WHERE (state = 'draft');

-- CreateIndex
CREATE UNIQUE INDEX "stage_record_one_signed_key" ON "stage_record"("tenant_id", "job_id", "stage") WHERE (state = 'signed');

-- CreateIndex
CREATE UNIQUE INDEX "stage_record_tenant_id_client_id_key" ON "stage_record"("tenant_id", "client_id");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_startup_signed_on_idx" ON "job_fact"("tenant_id", "startup_signed_on");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_startup_month_idx" ON "job_fact"("tenant_id", "startup_month");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_tech_id_idx" ON "job_fact"("tenant_id", "tech_id");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_equipment_model_id_idx" ON "job_fact"("tenant_id", "equipment_model_id");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_equipment_family_id_idx" ON "job_fact"("tenant_id", "equipment_family_id");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_control_model_id_idx" ON "job_fact"("tenant_id", "control_model_id");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_verdict_idx" ON "job_fact"("tenant_id", "verdict");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_first_stage_cfm_per_ton_idx" ON "job_fact"("tenant_id", "first_stage_cfm_per_ton");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_second_stage_cfm_per_ton_idx" ON "job_fact"("tenant_id", "second_stage_cfm_per_ton");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_sensible_ratio_idx" ON "job_fact"("tenant_id", "sensible_ratio");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_moisture_removal_lb_per_h_idx" ON "job_fact"("tenant_id", "moisture_removal_lb_per_h");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_lived_dry_hours_idx" ON "job_fact"("tenant_id", "lived_dry_hours");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_share_between_50_and_60_pct_idx" ON "job_fact"("tenant_id", "share_between_50_and_60_pct");

-- CreateIndex
CREATE INDEX "job_fact_tenant_id_humidity_complaint_count_idx" ON "job_fact"("tenant_id", "humidity_complaint_count");

-- CreateIndex
CREATE INDEX "ledger_line_tenant_id_line_key_verdict_idx" ON "ledger_line"("tenant_id", "line_key", "verdict");

-- CreateIndex
CREATE UNIQUE INDEX "ledger_line_tenant_id_job_id_line_key_key" ON "ledger_line"("tenant_id", "job_id", "line_key");

-- CreateIndex
CREATE INDEX "option_tenant_id_job_id_position_idx" ON "option"("tenant_id", "job_id", "position");

-- CreateIndex
CREATE INDEX "forecast_tenant_id_job_id_idx" ON "forecast"("tenant_id", "job_id");

-- CreateIndex
CREATE INDEX "forecast_tenant_id_weather_file_id_idx" ON "forecast"("tenant_id", "weather_file_id");

-- CreateIndex
CREATE UNIQUE INDEX "forecast_tenant_id_option_id_inputs_hash_key" ON "forecast"("tenant_id", "option_id", "inputs_hash");

-- CreateIndex
CREATE UNIQUE INDEX "weather_file_tenant_id_sha256_key" ON "weather_file"("tenant_id", "sha256");

-- CreateIndex
CREATE INDEX "equipment_model_tenant_id_maker_name_idx" ON "equipment_model"("tenant_id", "maker", "name");

-- CreateIndex
CREATE UNIQUE INDEX "equipment_model_tenant_id_family_id_version_key" ON "equipment_model"("tenant_id", "family_id", "version");

-- CreateIndex
CREATE INDEX "performance_point_tenant_id_model_id_mode_capacity_setting_idx" ON "performance_point"("tenant_id", "model_id", "mode", "capacity_setting");

-- CreateIndex
CREATE UNIQUE INDEX "fan_point_tenant_id_model_id_airflow_setting_external_stati_key" ON "fan_point"("tenant_id", "model_id", "airflow_setting", "external_static_in_wc");

-- CreateIndex
CREATE INDEX "control_model_tenant_id_maker_name_idx" ON "control_model"("tenant_id", "maker", "name");

-- CreateIndex
CREATE UNIQUE INDEX "control_model_tenant_id_family_id_version_key" ON "control_model"("tenant_id", "family_id", "version");

-- CreateIndex
CREATE INDEX "instrument_tenant_id_kind_idx" ON "instrument"("tenant_id", "kind");

-- CreateIndex
CREATE INDEX "instrument_tenant_id_holder_id_idx" ON "instrument"("tenant_id", "holder_id");

-- CreateIndex
CREATE INDEX "log_source_tenant_id_header_fingerprint_idx" ON "log_source"("tenant_id", "header_fingerprint");

-- CreateIndex
CREATE UNIQUE INDEX "log_source_tenant_id_name_key" ON "log_source"("tenant_id", "name");

-- CreateIndex
CREATE INDEX "log_import_tenant_id_source_id_idx" ON "log_import"("tenant_id", "source_id");

-- CreateIndex
CREATE UNIQUE INDEX "log_import_tenant_id_job_id_source_id_sha256_key" ON "log_import"("tenant_id", "job_id", "source_id", "sha256");

-- CreateIndex
CREATE UNIQUE INDEX "log_import_tenant_id_client_id_key" ON "log_import"("tenant_id", "client_id");

-- CreateIndex
CREATE INDEX "log_day_tenant_id_import_id_idx" ON "log_day"("tenant_id", "import_id");

-- CreateIndex
CREATE INDEX "log_day_tenant_id_source_id_idx" ON "log_day"("tenant_id", "source_id");

-- CreateIndex
CREATE INDEX "callback_tenant_id_job_id_idx" ON "callback"("tenant_id", "job_id");

-- CreateIndex
CREATE INDEX "callback_tenant_id_state_reported_on_idx" ON "callback"("tenant_id", "state", "reported_on");

-- CreateIndex
CREATE INDEX "callback_tenant_id_kind_idx" ON "callback"("tenant_id", "kind");

-- CreateIndex
CREATE INDEX "attachment_tenant_id_job_id_created_at_idx" ON "attachment"("tenant_id", "job_id", "created_at");

-- CreateIndex
CREATE INDEX "attachment_tenant_id_stage_record_id_idx" ON "attachment"("tenant_id", "stage_record_id");

-- CreateIndex
CREATE INDEX "attachment_tenant_id_callback_id_idx" ON "attachment"("tenant_id", "callback_id");

-- CreateIndex
CREATE UNIQUE INDEX "attachment_tenant_id_client_id_key" ON "attachment"("tenant_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "packet_tenant_id_job_id_kind_revision_key" ON "packet"("tenant_id", "job_id", "kind", "revision");

-- CreateIndex
CREATE INDEX "packet_share_tenant_id_packet_id_idx" ON "packet_share"("tenant_id", "packet_id");

-- CreateIndex
CREATE UNIQUE INDEX "packet_share_tenant_id_token_hash_key" ON "packet_share"("tenant_id", "token_hash");

-- CreateIndex
CREATE INDEX "question_tenant_id_job_id_idx" ON "question"("tenant_id", "job_id");

-- CreateIndex
CREATE INDEX "question_tenant_id_asked_of_id_answered_at_idx" ON "question"("tenant_id", "asked_of_id", "answered_at");

-- CreateIndex
CREATE UNIQUE INDEX "question_tenant_id_client_id_key" ON "question"("tenant_id", "client_id");

-- CreateIndex
CREATE INDEX "activity_tenant_id_entity_entity_id_seq_idx" ON "activity"("tenant_id", "entity", "entity_id", "seq");

-- CreateIndex
CREATE INDEX "activity_tenant_id_job_id_seq_idx" ON "activity"("tenant_id", "job_id", "seq");

-- CreateIndex
CREATE INDEX "activity_tenant_id_actor_id_seq_idx" ON "activity"("tenant_id", "actor_id", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "activity_tenant_id_seq_key" ON "activity"("tenant_id", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "saved_view_tenant_id_user_id_screen_name_key" ON "saved_view"("tenant_id", "user_id", "screen", "name");

-- CreateIndex
CREATE UNIQUE INDEX "api_token_tenant_id_token_hash_key" ON "api_token"("tenant_id", "token_hash");

-- CreateIndex
CREATE INDEX "webhook_delivery_tenant_id_webhook_id_created_at_idx" ON "webhook_delivery"("tenant_id", "webhook_id", "created_at" DESC);

-- CreateIndex
CREATE INDEX "webhook_delivery_tenant_id_state_next_attempt_at_idx" ON "webhook_delivery"("tenant_id", "state", "next_attempt_at");

-- CreateIndex
CREATE INDEX "sync_receipt_tenant_id_user_id_received_at_idx" ON "sync_receipt"("tenant_id", "user_id", "received_at");

-- CreateIndex
CREATE INDEX "company_export_tenant_id_created_at_idx" ON "company_export"("tenant_id", "created_at");

-- AddForeignKey
ALTER TABLE "password_reset" ADD CONSTRAINT "password_reset_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_tenant_id_fkey" FOREIGN KEY ("tenant_id") REFERENCES "tenant"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "tenant_counter" ADD CONSTRAINT "tenant_counter_tenant_id_fkey" FOREIGN KEY ("tenant_id") REFERENCES "tenant"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "brand" ADD CONSTRAINT "brand_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rule_limits" ADD CONSTRAINT "rule_limits_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "customer" ADD CONSTRAINT "customer_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "customer" ADD CONSTRAINT "customer_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "home" ADD CONSTRAINT "home_tenant_id_customer_id_fkey" FOREIGN KEY ("tenant_id", "customer_id") REFERENCES "customer"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "home" ADD CONSTRAINT "home_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "home" ADD CONSTRAINT "home_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_tenant_id_customer_id_fkey" FOREIGN KEY ("tenant_id", "customer_id") REFERENCES "customer"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_tenant_id_home_id_fkey" FOREIGN KEY ("tenant_id", "home_id") REFERENCES "home"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_tenant_id_weather_file_id_fkey" FOREIGN KEY ("tenant_id", "weather_file_id") REFERENCES "weather_file"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_tenant_id_chosen_option_id_fkey" FOREIGN KEY ("tenant_id", "chosen_option_id") REFERENCES "option"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_assignment" ADD CONSTRAINT "job_assignment_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_assignment" ADD CONSTRAINT "job_assignment_tenant_id_user_id_fkey" FOREIGN KEY ("tenant_id", "user_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_assignment" ADD CONSTRAINT "job_assignment_tenant_id_assigned_by_fkey" FOREIGN KEY ("tenant_id", "assigned_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "stage_record" ADD CONSTRAINT "stage_record_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "stage_record" ADD CONSTRAINT "stage_record_tenant_id_signed_by_fkey" FOREIGN KEY ("tenant_id", "signed_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "stage_record" ADD CONSTRAINT "stage_record_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "stage_record" ADD CONSTRAINT "stage_record_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_fact" ADD CONSTRAINT "job_fact_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_fact" ADD CONSTRAINT "job_fact_tenant_id_tech_id_fkey" FOREIGN KEY ("tenant_id", "tech_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_fact" ADD CONSTRAINT "job_fact_tenant_id_equipment_model_id_fkey" FOREIGN KEY ("tenant_id", "equipment_model_id") REFERENCES "equipment_model"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_fact" ADD CONSTRAINT "job_fact_tenant_id_control_model_id_fkey" FOREIGN KEY ("tenant_id", "control_model_id") REFERENCES "control_model"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "ledger_line" ADD CONSTRAINT "ledger_line_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "option" ADD CONSTRAINT "option_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE CASCADE ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "option" ADD CONSTRAINT "option_tenant_id_equipment_model_id_fkey" FOREIGN KEY ("tenant_id", "equipment_model_id") REFERENCES "equipment_model"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "option" ADD CONSTRAINT "option_tenant_id_control_model_id_fkey" FOREIGN KEY ("tenant_id", "control_model_id") REFERENCES "control_model"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "option" ADD CONSTRAINT "option_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "option" ADD CONSTRAINT "option_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "forecast" ADD CONSTRAINT "forecast_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "forecast" ADD CONSTRAINT "forecast_tenant_id_option_id_fkey" FOREIGN KEY ("tenant_id", "option_id") REFERENCES "option"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "forecast" ADD CONSTRAINT "forecast_tenant_id_weather_file_id_fkey" FOREIGN KEY ("tenant_id", "weather_file_id") REFERENCES "weather_file"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "forecast" ADD CONSTRAINT "forecast_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "weather_file" ADD CONSTRAINT "weather_file_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "equipment_model" ADD CONSTRAINT "equipment_model_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "performance_point" ADD CONSTRAINT "performance_point_tenant_id_model_id_fkey" FOREIGN KEY ("tenant_id", "model_id") REFERENCES "equipment_model"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "fan_point" ADD CONSTRAINT "fan_point_tenant_id_model_id_fkey" FOREIGN KEY ("tenant_id", "model_id") REFERENCES "equipment_model"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "control_model" ADD CONSTRAINT "control_model_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "instrument" ADD CONSTRAINT "instrument_tenant_id_holder_id_fkey" FOREIGN KEY ("tenant_id", "holder_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "instrument" ADD CONSTRAINT "instrument_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "instrument" ADD CONSTRAINT "instrument_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_source" ADD CONSTRAINT "log_source_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_source" ADD CONSTRAINT "log_source_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_import" ADD CONSTRAINT "log_import_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_import" ADD CONSTRAINT "log_import_tenant_id_source_id_fkey" FOREIGN KEY ("tenant_id", "source_id") REFERENCES "log_source"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_import" ADD CONSTRAINT "log_import_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_day" ADD CONSTRAINT "log_day_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_day" ADD CONSTRAINT "log_day_tenant_id_source_id_fkey" FOREIGN KEY ("tenant_id", "source_id") REFERENCES "log_source"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "log_day" ADD CONSTRAINT "log_day_tenant_id_import_id_fkey" FOREIGN KEY ("tenant_id", "import_id") REFERENCES "log_import"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "callback" ADD CONSTRAINT "callback_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "callback" ADD CONSTRAINT "callback_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "callback" ADD CONSTRAINT "callback_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "attachment" ADD CONSTRAINT "attachment_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "attachment" ADD CONSTRAINT "attachment_tenant_id_stage_record_id_fkey" FOREIGN KEY ("tenant_id", "stage_record_id") REFERENCES "stage_record"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "attachment" ADD CONSTRAINT "attachment_tenant_id_callback_id_fkey" FOREIGN KEY ("tenant_id", "callback_id") REFERENCES "callback"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "attachment" ADD CONSTRAINT "attachment_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "packet" ADD CONSTRAINT "packet_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "packet" ADD CONSTRAINT "packet_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "packet_share" ADD CONSTRAINT "packet_share_tenant_id_packet_id_fkey" FOREIGN KEY ("tenant_id", "packet_id") REFERENCES "packet"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "packet_share" ADD CONSTRAINT "packet_share_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_tenant_id_asked_of_id_fkey" FOREIGN KEY ("tenant_id", "asked_of_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_tenant_id_answered_by_fkey" FOREIGN KEY ("tenant_id", "answered_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "activity" ADD CONSTRAINT "activity_tenant_id_actor_id_fkey" FOREIGN KEY ("tenant_id", "actor_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "activity" ADD CONSTRAINT "activity_tenant_id_job_id_fkey" FOREIGN KEY ("tenant_id", "job_id") REFERENCES "job"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "activity" ADD CONSTRAINT "activity_tenant_id_fkey" FOREIGN KEY ("tenant_id") REFERENCES "tenant"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "saved_view" ADD CONSTRAINT "saved_view_tenant_id_user_id_fkey" FOREIGN KEY ("tenant_id", "user_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "api_token" ADD CONSTRAINT "api_token_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "webhook" ADD CONSTRAINT "webhook_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "webhook" ADD CONSTRAINT "webhook_tenant_id_updated_by_fkey" FOREIGN KEY ("tenant_id", "updated_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "webhook_delivery" ADD CONSTRAINT "webhook_delivery_tenant_id_webhook_id_fkey" FOREIGN KEY ("tenant_id", "webhook_id") REFERENCES "webhook"("tenant_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "sync_receipt" ADD CONSTRAINT "sync_receipt_tenant_id_user_id_fkey" FOREIGN KEY ("tenant_id", "user_id") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "company_export" ADD CONSTRAINT "company_export_tenant_id_created_by_fkey" FOREIGN KEY ("tenant_id", "created_by") REFERENCES "membership"("tenant_id", "user_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

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
