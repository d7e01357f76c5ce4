-- CreateTable
CREATE TABLE "mail_message" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "kind" TEXT NOT NULL,
    "message_id" TEXT NOT NULL,
    "person_id" UUID,
    "recipient" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "digest_id" UUID,
    "enqueued_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "mail_message_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "mail_attempt" (
    "id" BIGSERIAL NOT NULL,
    "mail_message_id" UUID NOT NULL,
    "outcome" TEXT NOT NULL,
    "transport" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    "happened_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "mail_attempt_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reminder" (
    "id" BIGSERIAL NOT NULL,
    "due_kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "due_on" DATE NOT NULL,
    "stage" TEXT NOT NULL,
    "digest_id" UUID NOT NULL,
    "reminded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "reminder_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "mail_message_message_id_key" ON "mail_message"("message_id");

-- CreateIndex
CREATE INDEX "mail_message_enqueued_at_idx" ON "mail_message"("enqueued_at");

-- CreateIndex
CREATE INDEX "mail_attempt_mail_message_id_idx" ON "mail_attempt"("mail_message_id");

-- CreateIndex
CREATE INDEX "reminder_digest_id_idx" ON "reminder"("digest_id");

-- CreateIndex
CREATE UNIQUE INDEX "reminder_due_kind_subject_id_due_on_stage_key" ON "reminder"("due_kind", "subject_id", "due_on", "stage");

-- AddForeignKey
ALTER TABLE "mail_attempt" ADD CONSTRAINT "mail_attempt_mail_message_id_fkey" FOREIGN KEY ("mail_message_id") REFERENCES "mail_message"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
