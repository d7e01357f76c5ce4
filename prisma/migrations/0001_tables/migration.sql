-- CreateTable
CREATE TABLE "audit_head" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "sequence" BIGINT NOT NULL,
    "hash" BYTEA NOT NULL,

    CONSTRAINT "audit_head_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_event" (
    "sequence" BIGINT NOT NULL,
    "at_microseconds" BIGINT NOT NULL,
    "actor_id" TEXT NOT NULL DEFAULT '',
    "action" TEXT NOT NULL,
    "entity_kind" TEXT NOT NULL,
    "entity_id" TEXT NOT NULL,
    "payload" TEXT NOT NULL,
    "previous_hash" BYTEA NOT NULL,
    "hash" BYTEA NOT NULL,

    CONSTRAINT "audit_event_pkey" PRIMARY KEY ("sequence")
);

-- CreateTable
CREATE TABLE "calibration" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "equipment_id" UUID NOT NULL,
    "certificate" TEXT NOT NULL,
    "issuer" TEXT NOT NULL,
    "accreditation" TEXT NOT NULL DEFAULT '',
    "route" TEXT NOT NULL,
    "performed_on" DATE NOT NULL,
    "due_on" DATE NOT NULL,
    "findings" TEXT NOT NULL,
    "recorded_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "calibration_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "certificate" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "evaluation_id" UUID NOT NULL,
    "content" TEXT NOT NULL,
    "content_hash" BYTEA NOT NULL,
    "token" TEXT NOT NULL,
    "signed_by_id" UUID NOT NULL,
    "signed_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "certificate_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "certificate_file" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "certificate_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" BYTEA NOT NULL,
    "renderer_version" TEXT NOT NULL,
    "rendered_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "certificate_file_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "customer" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "address_lines" TEXT NOT NULL,
    "contact_name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "customer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "equipment" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "tag" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "maker" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "serial" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'in-service',
    "particulars" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "equipment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "furnace" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "tag" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "maker" TEXT NOT NULL,
    "serial" TEXT NOT NULL,
    "minimum_celsius" DOUBLE PRECISION NOT NULL,
    "maximum_celsius" DOUBLE PRECISION NOT NULL,
    "bore_millimetre" DOUBLE PRECISION NOT NULL,
    "length_millimetre" DOUBLE PRECISION NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "furnace_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "furnace_configuration" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "furnace_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "places" INTEGER NOT NULL,
    "immersion_millimetre" DOUBLE PRECISION NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "furnace_configuration_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "characterisation" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "configuration_id" UUID NOT NULL,
    "performed_on" DATE NOT NULL,
    "valid_until" DATE NOT NULL,
    "uniformity_half_width_celsius" DOUBLE PRECISION NOT NULL,
    "statement" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "characterisation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "customer_order" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "purchase_order" TEXT,
    "state" TEXT NOT NULL DEFAULT 'recorded',
    "decision_rule" TEXT NOT NULL,
    "guard_band_ratio" DOUBLE PRECISION,
    "decision_rule_agreed_by" TEXT,
    "decision_rule_agreed_on" DATE,
    "uncertainty_digits" INTEGER NOT NULL DEFAULT 2,
    "note" TEXT NOT NULL DEFAULT '',
    "recorded_by_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "accepted_by_id" UUID,
    "accepted_at" TIMESTAMPTZ(6),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "customer_order_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_line" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "type_letter" TEXT NOT NULL,
    "construction" TEXT NOT NULL,
    "protection" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "tolerance_standard" TEXT,
    "tolerance_class" TEXT,
    "temperature_unit" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "order_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_setpoint" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_line_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "typed" TEXT NOT NULL,
    "celsius" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "order_setpoint_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "evaluation" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "run_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "engine_version" TEXT NOT NULL,
    "evidence" TEXT NOT NULL,
    "blocks_digest" BYTEA NOT NULL,
    "inputs_digest" BYTEA NOT NULL,
    "findings" TEXT NOT NULL,
    "evaluated_by_id" UUID NOT NULL,
    "evaluated_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "evaluation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "result" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "evaluation_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "setpoint_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "point" TEXT NOT NULL,

    CONSTRAINT "result_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "review_decision" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "evaluation_id" UUID NOT NULL,
    "sensor_id" UUID,
    "decision" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "exception_reason" TEXT,
    "decided_by_id" UUID NOT NULL,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "review_decision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "run" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "configuration_id" UUID NOT NULL,
    "voltmeter_id" UUID NOT NULL,
    "scanner_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "performer_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL,
    "started_at" TIMESTAMPTZ(6),
    "budget_inputs" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "run_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "run_setpoint" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "run_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "celsius" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "run_setpoint_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "load_place" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "run_id" UUID NOT NULL,
    "place" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "sensor_id" UUID,
    "equipment_id" UUID,
    "customer_id" UUID,
    "channel" TEXT NOT NULL,
    "junction_id" UUID NOT NULL,
    "junction_celsius" DOUBLE PRECISION NOT NULL,
    "immersion_millimetre" DOUBLE PRECISION,

    CONSTRAINT "load_place_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "tip_check" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "load_place_id" UUID NOT NULL,
    "rise_microvolt" DOUBLE PRECISION NOT NULL,
    "only_this_channel" BOOLEAN NOT NULL,
    "checked_by_id" UUID NOT NULL,
    "checked_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "tip_check_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "scan_block" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "run_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "source" TEXT NOT NULL,
    "file_name" TEXT,
    "source_sha256" BYTEA NOT NULL,
    "reading_count" INTEGER NOT NULL,
    "leaves" BYTEA NOT NULL,
    "root" BYTEA NOT NULL,
    "received_by_id" UUID NOT NULL,
    "received_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "scan_block_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "scan_block_channel" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "block_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "channel" TEXT NOT NULL,
    "customer_id" UUID,
    "count" INTEGER NOT NULL,
    "times" BYTEA NOT NULL,
    "values" BYTEA NOT NULL,
    "polarity" BYTEA NOT NULL,
    "salt" BYTEA NOT NULL,
    "leaf" BYTEA NOT NULL,

    CONSTRAINT "scan_block_channel_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stability_window" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "setpoint_id" UUID NOT NULL,
    "from_seconds" DOUBLE PRECISION NOT NULL,
    "to_seconds" DOUBLE PRECISION NOT NULL,
    "origin" TEXT NOT NULL,
    "assessment" TEXT NOT NULL,
    "blocks_digest" BYTEA NOT NULL,
    "accepted_by_id" UUID NOT NULL,
    "accepted_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "stability_window_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sensor_setpoint_state" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "setpoint_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "said_by_id" UUID NOT NULL,
    "said_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "sensor_setpoint_state_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sensor" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "tag" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "order_line_id" UUID NOT NULL,
    "serial" TEXT NOT NULL,
    "type_letter" TEXT NOT NULL,
    "construction" TEXT NOT NULL,
    "protection" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'received',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "sensor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "intake" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "received_on" DATE NOT NULL,
    "condition" TEXT NOT NULL,
    "condition_note" TEXT NOT NULL DEFAULT '',
    "loop_resistance_ohm" DOUBLE PRECISION,
    "insulation_megaohm" DOUBLE PRECISION,
    "polarity" TEXT NOT NULL,
    "type_check" TEXT NOT NULL,
    "taken_in_by_id" UUID NOT NULL,
    "taken_in_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "intake_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "laboratory" (
    "id" TEXT NOT NULL DEFAULT 'laboratory',
    "name" TEXT NOT NULL,
    "address_lines" TEXT NOT NULL,
    "contact" TEXT NOT NULL,
    "accreditation_text" TEXT NOT NULL DEFAULT '',
    "country_code" TEXT NOT NULL DEFAULT 'GB',
    "performer_may_sign_off" BOOLEAN NOT NULL DEFAULT false,
    "is_demo" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "laboratory_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "password_hash" TEXT NOT NULL,
    "customer_id" UUID,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "session_epoch" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person_role" (
    "person_id" UUID NOT NULL,
    "role" TEXT NOT NULL,

    CONSTRAINT "person_role_pkey" PRIMARY KEY ("person_id","role")
);

-- CreateTable
CREATE TABLE "first_access" (
    "token_hash" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "used_at" TIMESTAMPTZ(6),

    CONSTRAINT "first_access_pkey" PRIMARY KEY ("token_hash")
);

-- CreateTable
CREATE TABLE "sign_in_attempt" (
    "id" BIGSERIAL NOT NULL,
    "email" TEXT NOT NULL,
    "succeeded" BOOLEAN NOT NULL,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "sign_in_attempt_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "counter" (
    "name" TEXT NOT NULL,
    "value" INTEGER NOT NULL,

    CONSTRAINT "counter_pkey" PRIMARY KEY ("name")
);

-- CreateIndex
CREATE INDEX "audit_event_entity_kind_entity_id_idx" ON "audit_event"("entity_kind", "entity_id");

-- CreateIndex
CREATE UNIQUE INDEX "calibration_equipment_id_certificate_key" ON "calibration"("equipment_id", "certificate");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_number_key" ON "certificate"("number");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_token_key" ON "certificate"("token");

-- CreateIndex
CREATE INDEX "certificate_customer_id_idx" ON "certificate"("customer_id");

-- CreateIndex
CREATE INDEX "certificate_order_id_idx" ON "certificate"("order_id");

-- CreateIndex
CREATE INDEX "certificate_sensor_id_idx" ON "certificate"("sensor_id");

-- CreateIndex
CREATE INDEX "certificate_file_certificate_id_idx" ON "certificate_file"("certificate_id");

-- CreateIndex
CREATE INDEX "certificate_file_customer_id_idx" ON "certificate_file"("customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "customer_name_key" ON "customer"("name");

-- CreateIndex
CREATE UNIQUE INDEX "equipment_tag_key" ON "equipment"("tag");

-- CreateIndex
CREATE UNIQUE INDEX "furnace_tag_key" ON "furnace"("tag");

-- CreateIndex
CREATE UNIQUE INDEX "furnace_configuration_furnace_id_name_key" ON "furnace_configuration"("furnace_id", "name");

-- CreateIndex
CREATE UNIQUE INDEX "customer_order_number_key" ON "customer_order"("number");

-- CreateIndex
CREATE INDEX "customer_order_customer_id_idx" ON "customer_order"("customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "order_line_order_id_position_key" ON "order_line"("order_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "order_setpoint_order_line_id_position_key" ON "order_setpoint"("order_line_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "evaluation_run_id_sequence_key" ON "evaluation"("run_id", "sequence");

-- CreateIndex
CREATE INDEX "result_run_id_idx" ON "result"("run_id");

-- CreateIndex
CREATE INDEX "result_customer_id_idx" ON "result"("customer_id");

-- CreateIndex
CREATE INDEX "result_sensor_id_idx" ON "result"("sensor_id");

-- CreateIndex
CREATE UNIQUE INDEX "result_evaluation_id_sensor_id_setpoint_id_key" ON "result"("evaluation_id", "sensor_id", "setpoint_id");

-- CreateIndex
CREATE INDEX "review_decision_run_id_idx" ON "review_decision"("run_id");

-- CreateIndex
CREATE UNIQUE INDEX "run_number_key" ON "run"("number");

-- CreateIndex
CREATE UNIQUE INDEX "run_setpoint_run_id_position_key" ON "run_setpoint"("run_id", "position");

-- CreateIndex
CREATE INDEX "load_place_customer_id_run_id_idx" ON "load_place"("customer_id", "run_id");

-- CreateIndex
CREATE UNIQUE INDEX "load_place_run_id_channel_key" ON "load_place"("run_id", "channel");

-- CreateIndex
CREATE UNIQUE INDEX "load_place_run_id_place_key" ON "load_place"("run_id", "place");

-- CreateIndex
CREATE INDEX "tip_check_run_id_idx" ON "tip_check"("run_id");

-- CreateIndex
CREATE UNIQUE INDEX "scan_block_run_id_sequence_key" ON "scan_block"("run_id", "sequence");

-- CreateIndex
CREATE INDEX "scan_block_channel_run_id_channel_idx" ON "scan_block_channel"("run_id", "channel");

-- CreateIndex
CREATE INDEX "scan_block_channel_customer_id_idx" ON "scan_block_channel"("customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "scan_block_channel_block_id_ordinal_key" ON "scan_block_channel"("block_id", "ordinal");

-- CreateIndex
CREATE INDEX "stability_window_run_id_idx" ON "stability_window"("run_id");

-- CreateIndex
CREATE INDEX "sensor_setpoint_state_run_id_idx" ON "sensor_setpoint_state"("run_id");

-- CreateIndex
CREATE INDEX "sensor_setpoint_state_customer_id_idx" ON "sensor_setpoint_state"("customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "sensor_tag_key" ON "sensor"("tag");

-- CreateIndex
CREATE INDEX "sensor_customer_id_idx" ON "sensor"("customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "sensor_customer_id_serial_order_line_id_key" ON "sensor"("customer_id", "serial", "order_line_id");

-- CreateIndex
CREATE UNIQUE INDEX "intake_sensor_id_key" ON "intake"("sensor_id");

-- CreateIndex
CREATE UNIQUE INDEX "person_email_key" ON "person"("email");

-- CreateIndex
CREATE INDEX "sign_in_attempt_email_at_idx" ON "sign_in_attempt"("email", "at");

-- AddForeignKey
ALTER TABLE "calibration" ADD CONSTRAINT "calibration_equipment_id_fkey" FOREIGN KEY ("equipment_id") REFERENCES "equipment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "certificate_file" ADD CONSTRAINT "certificate_file_certificate_id_fkey" FOREIGN KEY ("certificate_id") REFERENCES "certificate"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "furnace_configuration" ADD CONSTRAINT "furnace_configuration_furnace_id_fkey" FOREIGN KEY ("furnace_id") REFERENCES "furnace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "characterisation" ADD CONSTRAINT "characterisation_configuration_id_fkey" FOREIGN KEY ("configuration_id") REFERENCES "furnace_configuration"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "customer_order" ADD CONSTRAINT "customer_order_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "order_line" ADD CONSTRAINT "order_line_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "customer_order"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "order_setpoint" ADD CONSTRAINT "order_setpoint_order_line_id_fkey" FOREIGN KEY ("order_line_id") REFERENCES "order_line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "result" ADD CONSTRAINT "result_evaluation_id_fkey" FOREIGN KEY ("evaluation_id") REFERENCES "evaluation"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "run_setpoint" ADD CONSTRAINT "run_setpoint_run_id_fkey" FOREIGN KEY ("run_id") REFERENCES "run"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "load_place" ADD CONSTRAINT "load_place_run_id_fkey" FOREIGN KEY ("run_id") REFERENCES "run"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "scan_block_channel" ADD CONSTRAINT "scan_block_channel_block_id_fkey" FOREIGN KEY ("block_id") REFERENCES "scan_block"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sensor" ADD CONSTRAINT "sensor_order_line_id_fkey" FOREIGN KEY ("order_line_id") REFERENCES "order_line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "intake" ADD CONSTRAINT "intake_sensor_id_fkey" FOREIGN KEY ("sensor_id") REFERENCES "sensor"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person_role" ADD CONSTRAINT "person_role_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
