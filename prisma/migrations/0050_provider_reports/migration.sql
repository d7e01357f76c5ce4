-- CreateTable
CREATE TABLE "provider_report" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "provider_id" UUID NOT NULL,
    "provider_name" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "certificate" TEXT NOT NULL,
    "issued_on" DATE NOT NULL,
    "accreditation" TEXT NOT NULL DEFAULT '',
    "results" TEXT NOT NULL,
    "correction" TEXT NOT NULL DEFAULT '',
    "file_name" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "sha256" BYTEA NOT NULL,
    "recorded_by_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "provider_report_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "provider_report_decision" (
    "id" BIGSERIAL NOT NULL,
    "report_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "decision" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "decided_by_id" UUID NOT NULL,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "provider_report_decision_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "provider_report_sensor_id_sequence_key" ON "provider_report"("sensor_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "provider_report_decision_report_id_key" ON "provider_report_decision"("report_id");
