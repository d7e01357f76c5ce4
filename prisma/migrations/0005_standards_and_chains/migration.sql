-- AlterTable
ALTER TABLE "calibration" ADD COLUMN     "conditions" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "document_id" UUID,
ADD COLUMN     "from_celsius" DOUBLE PRECISION,
ADD COLUMN     "in_house_certificate_id" UUID,
ADD COLUMN     "provider_id" UUID,
ADD COLUMN     "scale" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "source" TEXT NOT NULL DEFAULT 'typed',
ADD COLUMN     "to_celsius" DOUBLE PRECISION,
ADD COLUMN     "traceability_statement" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "equipment" ADD COLUMN     "calibration_interval_months" INTEGER,
ADD COLUMN     "check_interval_days" INTEGER,
ADD COLUMN     "firmware" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "location" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "maintenance_interval_days" INTEGER,
ADD COLUMN     "received_on" DATE,
ADD COLUMN     "requirement" TEXT NOT NULL DEFAULT '{}';

-- AlterTable
ALTER TABLE "furnace" ADD COLUMN     "best_immersion_millimetre" DOUBLE PRECISION,
ADD COLUMN     "controller_setpoints" TEXT NOT NULL DEFAULT '[]',
ADD COLUMN     "equipment_id" UUID,
ADD COLUMN     "ramp_down_celsius_per_hour" DOUBLE PRECISION,
ADD COLUMN     "ramp_up_celsius_per_hour" DOUBLE PRECISION,
ADD COLUMN     "working_length_millimetre" DOUBLE PRECISION,
ADD COLUMN     "zones" INTEGER NOT NULL DEFAULT 1;

-- AlterTable
ALTER TABLE "furnace_configuration" ADD COLUMN     "bores" TEXT NOT NULL DEFAULT '[]',
ADD COLUMN     "bundle_diameter_millimetre" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "characterisation" ADD COLUMN     "characterisation_run_id" UUID,
ADD COLUMN     "engine_version" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "figures" TEXT,
ADD COLUMN     "recorded_by_id" UUID,
ADD COLUMN     "source" TEXT NOT NULL DEFAULT 'typed';

-- AlterTable
ALTER TABLE "order_line" ADD COLUMN     "interval_rule" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "largest_interval_celsius" DOUBLE PRECISION,
ADD COLUMN     "maximum_celsius" DOUBLE PRECISION,
ADD COLUMN     "use_from_celsius" DOUBLE PRECISION,
ADD COLUMN     "use_to_celsius" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "run" ADD COLUMN     "ambient_id" UUID,
ADD COLUMN     "procedure_revision_id" UUID;

-- AlterTable
ALTER TABLE "load_place" ADD COLUMN     "lead_id" UUID;

-- AlterTable
ALTER TABLE "sensor" ADD COLUMN     "build" TEXT NOT NULL DEFAULT '{}';

-- AlterTable
ALTER TABLE "laboratory" ADD COLUMN     "accreditation_mark_id" UUID,
ADD COLUMN     "accreditation_number" TEXT NOT NULL DEFAULT '';

-- CreateTable
CREATE TABLE "calibration_parent" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "calibration_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "identity" TEXT NOT NULL DEFAULT '',
    "issuer" TEXT NOT NULL DEFAULT '',
    "certificate" TEXT NOT NULL DEFAULT '',
    "route" TEXT NOT NULL,
    "performed_on" DATE,
    "valid_until" DATE,
    "expanded" DOUBLE PRECISION,
    "unit" TEXT NOT NULL DEFAULT '',
    "coverage_factor" DOUBLE PRECISION,
    "below" INTEGER,

    CONSTRAINT "calibration_parent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "calibration_decision" (
    "id" BIGSERIAL NOT NULL,
    "calibration_id" UUID NOT NULL,
    "decision" TEXT NOT NULL,
    "checks" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "decided_by_id" UUID,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "calibration_decision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "provider" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "route" TEXT NOT NULL,
    "accreditation" TEXT NOT NULL DEFAULT '',
    "accreditation_body" TEXT NOT NULL DEFAULT '',
    "state" TEXT NOT NULL DEFAULT 'candidate',
    "approved_from" DATE,
    "approved_until" DATE,
    "scope" TEXT NOT NULL DEFAULT '[]',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "provider_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "equipment_entry" (
    "id" BIGSERIAL NOT NULL,
    "equipment_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "happened_on" DATE NOT NULL,
    "outcome" TEXT NOT NULL DEFAULT 'none',
    "summary" TEXT NOT NULL,
    "figures" TEXT NOT NULL DEFAULT '{}',
    "document_id" UUID,
    "recorded_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "equipment_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reference_use" (
    "id" BIGSERIAL NOT NULL,
    "equipment_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "hours_in_furnace" DOUBLE PRECISION NOT NULL,
    "hours_above_1000" DOUBLE PRECISION NOT NULL,
    "highest_celsius" DOUBLE PRECISION NOT NULL,
    "immersion_millimetre" DOUBLE PRECISION,
    "counted_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "reference_use_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "evidence_document" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "sha256" BYTEA NOT NULL,
    "bytes" BYTEA NOT NULL,
    "media_type" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "received_by_id" UUID,
    "received_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "evidence_document_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "characterisation_run" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" TEXT NOT NULL,
    "configuration_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "plan" TEXT NOT NULL,
    "performer_id" UUID,
    "created_at" TIMESTAMPTZ(6) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "characterisation_run_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "characterisation_survey" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "characterisation_run_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "celsius" DOUBLE PRECISION NOT NULL,
    "measured_on" DATE NOT NULL,
    "readings" TEXT NOT NULL,
    "document_id" UUID,
    "evaluation" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "recorded_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "characterisation_survey_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "characterisation_decision" (
    "id" BIGSERIAL NOT NULL,
    "characterisation_id" UUID NOT NULL,
    "decision" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "decided_by_id" UUID,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "characterisation_decision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "inhomogeneity_test" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "sensor_id" UUID,
    "customer_id" UUID,
    "equipment_id" UUID,
    "celsius" DOUBLE PRECISION NOT NULL,
    "performed_on" DATE NOT NULL,
    "readings" TEXT NOT NULL,
    "document_id" UUID,
    "evaluation" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "recorded_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "inhomogeneity_test_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "inhomogeneity_decision" (
    "id" BIGSERIAL NOT NULL,
    "test_id" UUID NOT NULL,
    "decision" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "decided_by_id" UUID,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "inhomogeneity_decision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "bench_check" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "channel" TEXT NOT NULL DEFAULT '',
    "figures" TEXT NOT NULL,
    "checked_by_id" UUID NOT NULL,
    "checked_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "bench_check_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "gate_outcome" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "verdict" TEXT NOT NULL,
    "rows" TEXT NOT NULL,
    "policy" TEXT NOT NULL,
    "plan_digest" BYTEA NOT NULL,
    "assessed_by_id" UUID NOT NULL,
    "assessed_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "gate_outcome_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "gate_override" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "subject" TEXT NOT NULL DEFAULT '',
    "reason" TEXT NOT NULL,
    "reaches_certificate" BOOLEAN NOT NULL,
    "said_by_id" UUID NOT NULL,
    "said_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "gate_override_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "scope_line" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "type_letter" TEXT NOT NULL,
    "from_celsius" DOUBLE PRECISION NOT NULL,
    "to_celsius" DOUBLE PRECISION NOT NULL,
    "capability" TEXT NOT NULL,
    "valid_from" DATE NOT NULL,
    "valid_until" DATE,
    "source" TEXT NOT NULL,
    "recorded_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "scope_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "procedure" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "key" TEXT NOT NULL,
    "title" TEXT NOT NULL,

    CONSTRAINT "procedure_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "procedure_revision" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "procedure_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'draft',
    "budget_inputs" TEXT NOT NULL,
    "gate_policy" TEXT NOT NULL DEFAULT '{}',
    "change" TEXT NOT NULL DEFAULT '',
    "verification" TEXT NOT NULL DEFAULT '',
    "recorded_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "current_from" TIMESTAMPTZ(6),
    "current_by_id" UUID,
    "withdrawn_at" TIMESTAMPTZ(6),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "procedure_revision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "trace_node" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "kind" TEXT NOT NULL,
    "record_id" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "detail" TEXT NOT NULL DEFAULT '',
    "facts" TEXT NOT NULL DEFAULT '{}',
    "frozen_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "trace_node_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "trace_edge" (
    "id" BIGSERIAL NOT NULL,
    "from_id" UUID NOT NULL,
    "to_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "certificate" TEXT NOT NULL DEFAULT '',
    "issuer" TEXT NOT NULL DEFAULT '',
    "accreditation" TEXT NOT NULL DEFAULT '',
    "route" TEXT NOT NULL DEFAULT '',
    "performed_on" DATE,
    "valid_until" DATE,
    "expanded" DOUBLE PRECISION,
    "unit" TEXT NOT NULL DEFAULT '',
    "coverage_factor" DOUBLE PRECISION,
    "at_celsius" DOUBLE PRECISION,
    "sensitivity" DOUBLE PRECISION,
    "evidence_sha256" BYTEA,
    "frozen_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "trace_edge_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "calibration_parent_calibration_id_position_key" ON "calibration_parent"("calibration_id", "position");

-- CreateIndex
CREATE INDEX "calibration_decision_calibration_id_idx" ON "calibration_decision"("calibration_id");

-- CreateIndex
CREATE UNIQUE INDEX "provider_name_key" ON "provider"("name");

-- CreateIndex
CREATE INDEX "equipment_entry_equipment_id_happened_on_idx" ON "equipment_entry"("equipment_id", "happened_on");

-- CreateIndex
CREATE UNIQUE INDEX "reference_use_equipment_id_run_id_key" ON "reference_use"("equipment_id", "run_id");

-- CreateIndex
CREATE UNIQUE INDEX "evidence_document_sha256_key" ON "evidence_document"("sha256");

-- CreateIndex
CREATE UNIQUE INDEX "characterisation_run_number_key" ON "characterisation_run"("number");

-- CreateIndex
CREATE INDEX "characterisation_survey_characterisation_run_id_idx" ON "characterisation_survey"("characterisation_run_id");

-- CreateIndex
CREATE INDEX "characterisation_decision_characterisation_id_idx" ON "characterisation_decision"("characterisation_id");

-- CreateIndex
CREATE INDEX "inhomogeneity_test_sensor_id_idx" ON "inhomogeneity_test"("sensor_id");

-- CreateIndex
CREATE INDEX "inhomogeneity_test_equipment_id_idx" ON "inhomogeneity_test"("equipment_id");

-- CreateIndex
CREATE INDEX "inhomogeneity_decision_test_id_idx" ON "inhomogeneity_decision"("test_id");

-- CreateIndex
CREATE INDEX "bench_check_run_id_idx" ON "bench_check"("run_id");

-- CreateIndex
CREATE INDEX "gate_outcome_run_id_idx" ON "gate_outcome"("run_id");

-- CreateIndex
CREATE INDEX "gate_override_run_id_idx" ON "gate_override"("run_id");

-- CreateIndex
CREATE UNIQUE INDEX "procedure_key_key" ON "procedure"("key");

-- CreateIndex
CREATE UNIQUE INDEX "procedure_revision_procedure_id_revision_key" ON "procedure_revision"("procedure_id", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "trace_node_kind_record_id_key" ON "trace_node"("kind", "record_id");

-- CreateIndex
CREATE INDEX "trace_edge_from_id_idx" ON "trace_edge"("from_id");

-- CreateIndex
CREATE INDEX "trace_edge_to_id_idx" ON "trace_edge"("to_id");

-- CreateIndex
CREATE UNIQUE INDEX "furnace_equipment_id_key" ON "furnace"("equipment_id");

-- AddForeignKey
ALTER TABLE "calibration_parent" ADD CONSTRAINT "calibration_parent_calibration_id_fkey" FOREIGN KEY ("calibration_id") REFERENCES "calibration"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calibration_decision" ADD CONSTRAINT "calibration_decision_calibration_id_fkey" FOREIGN KEY ("calibration_id") REFERENCES "calibration"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "equipment_entry" ADD CONSTRAINT "equipment_entry_equipment_id_fkey" FOREIGN KEY ("equipment_id") REFERENCES "equipment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reference_use" ADD CONSTRAINT "reference_use_equipment_id_fkey" FOREIGN KEY ("equipment_id") REFERENCES "equipment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "characterisation_run" ADD CONSTRAINT "characterisation_run_configuration_id_fkey" FOREIGN KEY ("configuration_id") REFERENCES "furnace_configuration"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "characterisation_survey" ADD CONSTRAINT "characterisation_survey_characterisation_run_id_fkey" FOREIGN KEY ("characterisation_run_id") REFERENCES "characterisation_run"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "characterisation_decision" ADD CONSTRAINT "characterisation_decision_characterisation_id_fkey" FOREIGN KEY ("characterisation_id") REFERENCES "characterisation"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inhomogeneity_decision" ADD CONSTRAINT "inhomogeneity_decision_test_id_fkey" FOREIGN KEY ("test_id") REFERENCES "inhomogeneity_test"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "procedure_revision" ADD CONSTRAINT "procedure_revision_procedure_id_fkey" FOREIGN KEY ("procedure_id") REFERENCES "procedure"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
