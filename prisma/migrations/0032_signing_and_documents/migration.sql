-- DropIndex
DROP INDEX "certificate_file_certificate_id_idx";

-- AlterTable
ALTER TABLE "certificate_file" ADD COLUMN     "seal_fingerprint" TEXT,
ADD COLUMN     "unsealed_sha256" BYTEA;

-- AlterTable
ALTER TABLE "laboratory" ADD COLUMN     "signing_policy" TEXT NOT NULL DEFAULT '{}';

-- CreateTable
CREATE TABLE "certificate_attempt" (
    "id" BIGSERIAL NOT NULL,
    "certificate_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "step" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    "happened_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "certificate_attempt_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "amendment" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "certificate_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "corrections" TEXT NOT NULL,
    "asked_by_id" UUID NOT NULL,
    "asked_at" TIMESTAMPTZ(6) NOT NULL,
    "nonconformity_id" UUID,

    CONSTRAINT "amendment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "amendment_decision" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "amendment_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "outcome" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "decided_by_id" UUID NOT NULL,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "amendment_decision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "certificate_ending" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "certificate_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "successor_id" UUID,
    "decided_by_id" UUID NOT NULL,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "certificate_ending_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "review_opening" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "evaluation_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "setpoint_id" UUID NOT NULL,
    "opened_by_id" UUID NOT NULL,
    "opened_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "review_opening_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "review_sample" (
    "evaluation_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "seed" BYTEA NOT NULL,
    "drawn_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "review_sample_pkey" PRIMARY KEY ("evaluation_id")
);

-- CreateTable
CREATE TABLE "review_comment" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "evaluation_id" UUID NOT NULL,
    "sensor_id" UUID,
    "setpoint_id" UUID,
    "place" TEXT NOT NULL,
    "answers_id" BIGINT,
    "settles" BOOLEAN NOT NULL DEFAULT false,
    "text" TEXT NOT NULL,
    "written_by_id" UUID NOT NULL,
    "written_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "review_comment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "seal_key" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "fingerprint" TEXT NOT NULL,
    "algorithm" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "certificate_der" BYTEA NOT NULL,
    "chain_der" BYTEA NOT NULL,
    "not_before" TIMESTAMPTZ(6) NOT NULL,
    "not_after" TIMESTAMPTZ(6) NOT NULL,
    "origin" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "taken_up_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "seal_key_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "seal_key_ending" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "seal_key_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "effective_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "seal_key_ending_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "authorisation" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "person_id" UUID NOT NULL,
    "activity" TEXT NOT NULL,
    "type_letters" TEXT NOT NULL,
    "from_celsius" DOUBLE PRECISION NOT NULL,
    "to_celsius" DOUBLE PRECISION NOT NULL,
    "scope" TEXT NOT NULL,
    "procedure_id" UUID,
    "valid_from" DATE NOT NULL,
    "valid_until" DATE,
    "basis" TEXT NOT NULL,
    "granted_by_id" UUID NOT NULL,
    "granted_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "authorisation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "authorisation_withdrawal" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "authorisation_id" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "withdrawn_by_id" UUID NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "authorisation_withdrawal_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "signing_session" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "person_id" UUID NOT NULL,
    "person_session_id" UUID NOT NULL,
    "opened_at" TIMESTAMPTZ(6) NOT NULL,
    "last_signed_at" TIMESTAMPTZ(6) NOT NULL,
    "ended_at" TIMESTAMPTZ(6),

    CONSTRAINT "signing_session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "signature" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "certificate_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "printed_name" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "reviewed_hash" BYTEA NOT NULL,
    "content_hash" BYTEA NOT NULL,
    "means" TEXT NOT NULL,
    "act_id" TEXT NOT NULL,
    "signing_session_id" UUID NOT NULL,
    "authorisation_id" UUID NOT NULL,
    "signed_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "signature_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "opinion" (
    "id" BIGSERIAL NOT NULL,
    "run_id" UUID NOT NULL,
    "sensor_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "basis" TEXT NOT NULL,
    "authorisation_id" UUID NOT NULL,
    "author_id" UUID NOT NULL,
    "written_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "opinion_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "certificate_attempt_certificate_id_idx" ON "certificate_attempt"("certificate_id");

-- CreateIndex
CREATE INDEX "amendment_certificate_id_idx" ON "amendment"("certificate_id");

-- CreateIndex
CREATE UNIQUE INDEX "amendment_decision_amendment_id_key" ON "amendment_decision"("amendment_id");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_ending_certificate_id_key" ON "certificate_ending"("certificate_id");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_ending_successor_id_key" ON "certificate_ending"("successor_id");

-- CreateIndex
CREATE INDEX "certificate_ending_customer_id_idx" ON "certificate_ending"("customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "review_opening_evaluation_id_sensor_id_setpoint_id_opened_b_key" ON "review_opening"("evaluation_id", "sensor_id", "setpoint_id", "opened_by_id");

-- CreateIndex
CREATE INDEX "review_comment_run_id_idx" ON "review_comment"("run_id");

-- CreateIndex
CREATE UNIQUE INDEX "seal_key_fingerprint_key" ON "seal_key"("fingerprint");

-- CreateIndex
CREATE UNIQUE INDEX "seal_key_ending_seal_key_id_key" ON "seal_key_ending"("seal_key_id");

-- CreateIndex
CREATE INDEX "authorisation_person_id_idx" ON "authorisation"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "authorisation_withdrawal_authorisation_id_key" ON "authorisation_withdrawal"("authorisation_id");

-- CreateIndex
CREATE INDEX "signing_session_person_id_idx" ON "signing_session"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "signature_certificate_id_key" ON "signature"("certificate_id");

-- CreateIndex
CREATE INDEX "signature_person_id_idx" ON "signature"("person_id");

-- CreateIndex
CREATE INDEX "signature_act_id_idx" ON "signature"("act_id");

-- CreateIndex
CREATE INDEX "opinion_run_id_sensor_id_idx" ON "opinion"("run_id", "sensor_id");

-- CreateIndex
CREATE UNIQUE INDEX "certificate_file_certificate_id_media_type_key" ON "certificate_file"("certificate_id", "media_type");

-- AddForeignKey
ALTER TABLE "amendment_decision" ADD CONSTRAINT "amendment_decision_amendment_id_fkey" FOREIGN KEY ("amendment_id") REFERENCES "amendment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "seal_key_ending" ADD CONSTRAINT "seal_key_ending_seal_key_id_fkey" FOREIGN KEY ("seal_key_id") REFERENCES "seal_key"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "authorisation_withdrawal" ADD CONSTRAINT "authorisation_withdrawal_authorisation_id_fkey" FOREIGN KEY ("authorisation_id") REFERENCES "authorisation"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "signature" ADD CONSTRAINT "signature_signing_session_id_fkey" FOREIGN KEY ("signing_session_id") REFERENCES "signing_session"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
