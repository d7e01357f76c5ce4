-- CreateTable
CREATE TABLE "certificate_pending" (
    "certificate_id" UUID NOT NULL,

    CONSTRAINT "certificate_pending_pkey" PRIMARY KEY ("certificate_id")
);

-- AddForeignKey
ALTER TABLE "certificate_pending" ADD CONSTRAINT "certificate_pending_certificate_id_fkey" FOREIGN KEY ("certificate_id") REFERENCES "certificate"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
