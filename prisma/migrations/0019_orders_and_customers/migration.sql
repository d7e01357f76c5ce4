-- AlterTable
ALTER TABLE "customer_order" ADD COLUMN     "delivery_address_id" UUID,
ADD COLUMN     "invoice_address_id" UUID,
ADD COLUMN     "origin" TEXT NOT NULL DEFAULT 'desk',
ADD COLUMN     "promise_basis" TEXT NOT NULL DEFAULT '{}',
ADD COLUMN     "promised_on" DATE,
ADD COLUMN     "repeats_order_id" UUID,
ADD COLUMN     "rule_set" TEXT NOT NULL DEFAULT 'none',
ADD COLUMN     "urgency" TEXT NOT NULL DEFAULT 'standard';

-- AlterTable
ALTER TABLE "order_line" ADD COLUMN     "group_name" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "options" TEXT NOT NULL DEFAULT '{}',
ADD COLUMN     "performed_at" TEXT NOT NULL DEFAULT 'laboratory',
ADD COLUMN     "provider_id" UUID,
ADD COLUMN     "site_address" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "load_place" ADD COLUMN     "set_kind" TEXT NOT NULL DEFAULT 'as-received';

-- AlterTable
ALTER TABLE "intake" ADD COLUMN     "findings" TEXT NOT NULL DEFAULT '[]',
ADD COLUMN     "grounding" TEXT NOT NULL DEFAULT 'not-checked';

-- AlterTable
ALTER TABLE "laboratory" ADD COLUMN     "account_policy" TEXT NOT NULL DEFAULT '{}',
ADD COLUMN     "currency" TEXT NOT NULL DEFAULT 'GBP',
ADD COLUMN     "intake_policy" TEXT NOT NULL DEFAULT '{}';

-- AlterTable
ALTER TABLE "person" ADD COLUMN     "locked_until" TIMESTAMPTZ(6);

-- CreateTable
CREATE TABLE "person_session" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "person_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "came_by" TEXT NOT NULL,
    "had_code" BOOLEAN NOT NULL,
    "device" TEXT NOT NULL DEFAULT '',
    "started_at" TIMESTAMPTZ(6) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(6) NOT NULL,
    "ends_at" TIMESTAMPTZ(6) NOT NULL,
    "ended_at" TIMESTAMPTZ(6),

    CONSTRAINT "person_session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "second_factor" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "person_id" UUID NOT NULL,
    "sealed_secret" BYTEA NOT NULL,
    "began_at" TIMESTAMPTZ(6) NOT NULL,
    "confirmed_at" TIMESTAMPTZ(6),
    "last_step" BIGINT NOT NULL DEFAULT 0,
    "ended_at" TIMESTAMPTZ(6),

    CONSTRAINT "second_factor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "recovery_code" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "second_factor_id" UUID NOT NULL,
    "code_hash" TEXT NOT NULL,
    "used_at" TIMESTAMPTZ(6),

    CONSTRAINT "recovery_code_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "access_link" (
    "token_hash" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL DEFAULT '',
    "roles" TEXT NOT NULL DEFAULT '[]',
    "customer_id" UUID,
    "person_id" UUID,
    "made_by_id" UUID,
    "made_at" TIMESTAMPTZ(6) NOT NULL,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "used_at" TIMESTAMPTZ(6),
    "withdrawn_at" TIMESTAMPTZ(6),

    CONSTRAINT "access_link_pkey" PRIMARY KEY ("token_hash")
);

-- CreateTable
CREATE TABLE "outside_identity" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "person_id" UUID NOT NULL,
    "issuer" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "linked_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "outside_identity_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "price_item" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "key" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "per" TEXT NOT NULL,
    "type_letter" TEXT,
    "amount" INTEGER NOT NULL,
    "valid_from" DATE NOT NULL,
    "valid_until" DATE,
    "recorded_by_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "price_item_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quotation" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "order_version" INTEGER NOT NULL,
    "content" TEXT NOT NULL,
    "content_hash" BYTEA NOT NULL,
    "total_amount" INTEGER NOT NULL,
    "currency" TEXT NOT NULL,
    "valid_until" DATE NOT NULL,
    "made_by_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "quotation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_document" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "content" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" BYTEA NOT NULL,
    "made_by_id" UUID,
    "made_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "order_document_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "customer_link" (
    "token_hash" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "purpose" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "recipient" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "made_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "customer_link_pkey" PRIMARY KEY ("token_hash")
);

-- CreateTable
CREATE TABLE "agreement" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "quotation_id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "answer" TEXT NOT NULL,
    "content_hash" BYTEA NOT NULL,
    "purchase_order" TEXT NOT NULL DEFAULT '',
    "remark" TEXT NOT NULL DEFAULT '',
    "came_by" TEXT NOT NULL,
    "said_by_name" TEXT NOT NULL,
    "said_by_id" UUID,
    "said_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "agreement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "shipment" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "handed_over" TEXT NOT NULL,
    "carrier" TEXT NOT NULL DEFAULT '',
    "reference" TEXT NOT NULL DEFAULT '',
    "address" TEXT NOT NULL,
    "packed_by_id" UUID NOT NULL,
    "packed_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "shipment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "shipment_sensor" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "shipment_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,

    CONSTRAINT "shipment_sensor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoicing_file" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "rows" INTEGER NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" BYTEA NOT NULL,
    "made_by_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "invoicing_file_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoicing_row" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "invoicing_file_id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "sensor_id" UUID,
    "key" TEXT NOT NULL,
    "amount" INTEGER NOT NULL,

    CONSTRAINT "invoicing_row_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "furnace_slot" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "furnace_id" UUID NOT NULL,
    "order_id" UUID,
    "run_id" UUID,
    "starts_at" TIMESTAMPTZ(6) NOT NULL,
    "ends_at" TIMESTAMPTZ(6) NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "is_released" BOOLEAN NOT NULL DEFAULT false,
    "taken_by_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(6) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "furnace_slot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_review" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "occasion" TEXT NOT NULL,
    "answers" TEXT NOT NULL,
    "capability" TEXT NOT NULL,
    "order_version" INTEGER NOT NULL,
    "reviewed_by_id" UUID NOT NULL,
    "reviewed_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "order_review_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_note" (
    "id" BIGSERIAL NOT NULL,
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "is_for_customer" BOOLEAN NOT NULL,
    "said_by_id" UUID,
    "said_by_name" TEXT NOT NULL DEFAULT '',
    "said_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "order_note_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_difference" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "raised_by_id" UUID NOT NULL,
    "raised_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "order_difference_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_difference_settlement" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "difference_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "agreed_with" TEXT NOT NULL,
    "settled_by_id" UUID NOT NULL,
    "settled_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "order_difference_settlement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_change" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "reason" TEXT NOT NULL,
    "agreed_with" TEXT NOT NULL,
    "before" TEXT NOT NULL,
    "after" TEXT NOT NULL,
    "changed_by_id" UUID NOT NULL,
    "changed_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "order_change_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_change_acknowledgment" (
    "id" BIGSERIAL NOT NULL,
    "change_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "acknowledged_by_id" UUID NOT NULL,
    "acknowledged_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "order_change_acknowledgment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sensor_photo" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" BYTEA NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "taken_by_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "sensor_photo_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "intake_file" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "file_name" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" BYTEA NOT NULL,
    "rows" INTEGER NOT NULL,
    "received_by_id" UUID NOT NULL,
    "received_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "intake_file_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "storage_place" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "conditions" TEXT NOT NULL DEFAULT '',
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "storage_place_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "custody_event" (
    "id" BIGSERIAL NOT NULL,
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "place_id" UUID,
    "from_whom" TEXT NOT NULL DEFAULT '',
    "to_whom" TEXT NOT NULL DEFAULT '',
    "condition" TEXT NOT NULL DEFAULT '',
    "run_id" UUID,
    "shipment_id" UUID,
    "recorded_by_id" UUID,
    "happened_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "custody_event_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "hold" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "customer_id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "sensor_id" UUID,
    "kind" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "nonconformity_id" UUID,
    "placed_by_id" UUID NOT NULL,
    "placed_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "hold_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "hold_release" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "hold_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "outcome" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "disclaimer" TEXT NOT NULL DEFAULT '',
    "released_by_id" UUID,
    "released_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "hold_release_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "question" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "customer_id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "sensor_id" UUID,
    "hold_id" UUID,
    "text" TEXT NOT NULL,
    "choices" TEXT NOT NULL DEFAULT '[]',
    "asked_by_id" UUID NOT NULL,
    "asked_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "question_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "answer" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "question_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "choice" TEXT NOT NULL DEFAULT '',
    "text" TEXT NOT NULL DEFAULT '',
    "insists" BOOLEAN NOT NULL DEFAULT false,
    "came_by" TEXT NOT NULL,
    "said_by_name" TEXT NOT NULL,
    "said_by_id" UUID,
    "said_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "answer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "access_token" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "token_hash" TEXT NOT NULL,
    "beginning" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "customer_id" UUID,
    "scopes" TEXT NOT NULL,
    "made_by_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(6) NOT NULL,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "revoked_at" TIMESTAMPTZ(6),
    "last_used_at" TIMESTAMPTZ(6),

    CONSTRAINT "access_token_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "webhook" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "customer_id" UUID NOT NULL,
    "url" TEXT NOT NULL,
    "topics" TEXT NOT NULL,
    "sealed_secret" BYTEA NOT NULL,
    "made_by_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(6) NOT NULL,
    "ended_at" TIMESTAMPTZ(6),

    CONSTRAINT "webhook_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "webhook_message" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "webhook_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "topic" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "enqueued_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "webhook_message_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "webhook_attempt" (
    "id" BIGSERIAL NOT NULL,
    "webhook_message_id" UUID NOT NULL,
    "outcome" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    "happened_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "webhook_attempt_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_count" (
    "key" TEXT NOT NULL,
    "window_start" TIMESTAMPTZ(6) NOT NULL,
    "count" INTEGER NOT NULL,

    CONSTRAINT "rate_count_pkey" PRIMARY KEY ("key","window_start")
);

-- CreateTable
CREATE TABLE "nonconformity" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "title" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_name" TEXT NOT NULL,
    "subject_id" UUID,
    "customer_id" UUID,
    "opened_by_id" UUID,
    "opened_at" TIMESTAMPTZ(6) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "nonconformity_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "nonconformity_entry" (
    "id" BIGSERIAL NOT NULL,
    "nonconformity_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "figures" TEXT NOT NULL DEFAULT '{}',
    "said_by_id" UUID,
    "said_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "nonconformity_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sensor_anneal" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "celsius" DOUBLE PRECISION NOT NULL,
    "hours" DOUBLE PRECISION NOT NULL,
    "manner" TEXT NOT NULL,
    "performed_on" DATE NOT NULL,
    "performed_by_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "sensor_anneal_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "repeat_measurement" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "earlier_run_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "counting_rule" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "authorised_by_id" UUID NOT NULL,
    "authorised_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "repeat_measurement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "certificate_part" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "certificate_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "sensor_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "evaluation_id" UUID NOT NULL,
    "set_kind" TEXT NOT NULL,

    CONSTRAINT "certificate_part_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "customer_address" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "customer_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "address_lines" TEXT NOT NULL,
    "contact_name" TEXT NOT NULL DEFAULT '',
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "customer_address_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "recall_interval" (
    "id" BIGSERIAL NOT NULL,
    "customer_id" UUID NOT NULL,
    "serial" TEXT NOT NULL DEFAULT '',
    "months" INTEGER,
    "notice_days" INTEGER NOT NULL DEFAULT 30,
    "set_by_id" UUID NOT NULL,
    "set_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "recall_interval_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "recall_reminder" (
    "id" BIGSERIAL NOT NULL,
    "customer_id" UUID NOT NULL,
    "serial" TEXT NOT NULL,
    "due_on" DATE NOT NULL,
    "reminded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "recall_reminder_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "person_session_person_id_idx" ON "person_session"("person_id");

-- CreateIndex
CREATE INDEX "second_factor_person_id_idx" ON "second_factor"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "recovery_code_second_factor_id_code_hash_key" ON "recovery_code"("second_factor_id", "code_hash");

-- CreateIndex
CREATE INDEX "access_link_email_idx" ON "access_link"("email");

-- CreateIndex
CREATE INDEX "outside_identity_person_id_idx" ON "outside_identity"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "outside_identity_issuer_subject_key" ON "outside_identity"("issuer", "subject");

-- CreateIndex
CREATE INDEX "price_item_key_idx" ON "price_item"("key");

-- CreateIndex
CREATE UNIQUE INDEX "quotation_number_key" ON "quotation"("number");

-- CreateIndex
CREATE INDEX "quotation_order_id_idx" ON "quotation"("order_id");

-- CreateIndex
CREATE INDEX "order_document_order_id_idx" ON "order_document"("order_id");

-- CreateIndex
CREATE UNIQUE INDEX "order_document_kind_number_key" ON "order_document"("kind", "number");

-- CreateIndex
CREATE INDEX "customer_link_subject_id_idx" ON "customer_link"("subject_id");

-- CreateIndex
CREATE UNIQUE INDEX "agreement_quotation_id_key" ON "agreement"("quotation_id");

-- CreateIndex
CREATE UNIQUE INDEX "shipment_number_key" ON "shipment"("number");

-- CreateIndex
CREATE INDEX "shipment_order_id_idx" ON "shipment"("order_id");

-- CreateIndex
CREATE UNIQUE INDEX "shipment_sensor_sensor_id_key" ON "shipment_sensor"("sensor_id");

-- CreateIndex
CREATE INDEX "shipment_sensor_shipment_id_idx" ON "shipment_sensor"("shipment_id");

-- CreateIndex
CREATE UNIQUE INDEX "invoicing_file_number_key" ON "invoicing_file"("number");

-- CreateIndex
CREATE UNIQUE INDEX "invoicing_row_order_id_sensor_id_key_key" ON "invoicing_row"("order_id", "sensor_id", "key");

-- CreateIndex
CREATE INDEX "furnace_slot_furnace_id_starts_at_idx" ON "furnace_slot"("furnace_id", "starts_at");

-- CreateIndex
CREATE UNIQUE INDEX "order_review_order_id_sequence_key" ON "order_review"("order_id", "sequence");

-- CreateIndex
CREATE INDEX "order_note_order_id_idx" ON "order_note"("order_id");

-- CreateIndex
CREATE INDEX "order_difference_order_id_idx" ON "order_difference"("order_id");

-- CreateIndex
CREATE UNIQUE INDEX "order_difference_settlement_difference_id_key" ON "order_difference_settlement"("difference_id");

-- CreateIndex
CREATE UNIQUE INDEX "order_change_order_id_sequence_key" ON "order_change"("order_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "order_change_acknowledgment_change_id_run_id_key" ON "order_change_acknowledgment"("change_id", "run_id");

-- CreateIndex
CREATE INDEX "sensor_photo_sensor_id_idx" ON "sensor_photo"("sensor_id");

-- CreateIndex
CREATE INDEX "intake_file_order_id_idx" ON "intake_file"("order_id");

-- CreateIndex
CREATE UNIQUE INDEX "storage_place_code_key" ON "storage_place"("code");

-- CreateIndex
CREATE INDEX "custody_event_sensor_id_id_idx" ON "custody_event"("sensor_id", "id");

-- CreateIndex
CREATE INDEX "hold_order_id_idx" ON "hold"("order_id");

-- CreateIndex
CREATE INDEX "hold_sensor_id_idx" ON "hold"("sensor_id");

-- CreateIndex
CREATE UNIQUE INDEX "hold_release_hold_id_key" ON "hold_release"("hold_id");

-- CreateIndex
CREATE INDEX "question_order_id_idx" ON "question"("order_id");

-- CreateIndex
CREATE UNIQUE INDEX "answer_question_id_key" ON "answer"("question_id");

-- CreateIndex
CREATE UNIQUE INDEX "access_token_token_hash_key" ON "access_token"("token_hash");

-- CreateIndex
CREATE INDEX "access_token_customer_id_idx" ON "access_token"("customer_id");

-- CreateIndex
CREATE INDEX "webhook_customer_id_idx" ON "webhook"("customer_id");

-- CreateIndex
CREATE INDEX "webhook_message_webhook_id_idx" ON "webhook_message"("webhook_id");

-- CreateIndex
CREATE INDEX "webhook_attempt_webhook_message_id_idx" ON "webhook_attempt"("webhook_message_id");

-- CreateIndex
CREATE UNIQUE INDEX "nonconformity_number_key" ON "nonconformity"("number");

-- CreateIndex
CREATE INDEX "nonconformity_subject_id_idx" ON "nonconformity"("subject_id");

-- CreateIndex
CREATE INDEX "nonconformity_state_idx" ON "nonconformity"("state");

-- CreateIndex
CREATE INDEX "nonconformity_entry_nonconformity_id_idx" ON "nonconformity_entry"("nonconformity_id");

-- CreateIndex
CREATE INDEX "sensor_anneal_sensor_id_idx" ON "sensor_anneal"("sensor_id");

-- CreateIndex
CREATE INDEX "repeat_measurement_sensor_id_idx" ON "repeat_measurement"("sensor_id");

-- CreateIndex
CREATE UNIQUE INDEX "repeat_measurement_run_id_sensor_id_key" ON "repeat_measurement"("run_id", "sensor_id");

-- CreateIndex
CREATE INDEX "certificate_part_sensor_id_idx" ON "certificate_part"("sensor_id");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_part_certificate_id_position_key" ON "certificate_part"("certificate_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_part_certificate_id_sensor_id_set_kind_key" ON "certificate_part"("certificate_id", "sensor_id", "set_kind");

-- CreateIndex
CREATE INDEX "customer_address_customer_id_idx" ON "customer_address"("customer_id");

-- CreateIndex
CREATE INDEX "recall_interval_customer_id_serial_idx" ON "recall_interval"("customer_id", "serial");

-- CreateIndex
CREATE UNIQUE INDEX "recall_reminder_customer_id_serial_due_on_key" ON "recall_reminder"("customer_id", "serial", "due_on");

-- CreateIndex
CREATE INDEX "customer_order_recorded_at_id_idx" ON "customer_order"("recorded_at", "id");

-- CreateIndex
CREATE INDEX "customer_order_promised_on_idx" ON "customer_order"("promised_on");

-- CreateIndex
CREATE INDEX "sensor_order_line_id_idx" ON "sensor"("order_line_id");

-- CreateIndex
CREATE INDEX "sensor_state_idx" ON "sensor"("state");

-- CreateIndex
CREATE INDEX "sensor_serial_idx" ON "sensor"("serial");

-- AddForeignKey
ALTER TABLE "shipment_sensor" ADD CONSTRAINT "shipment_sensor_shipment_id_fkey" FOREIGN KEY ("shipment_id") REFERENCES "shipment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "nonconformity_entry" ADD CONSTRAINT "nonconformity_entry_nonconformity_id_fkey" FOREIGN KEY ("nonconformity_id") REFERENCES "nonconformity"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
