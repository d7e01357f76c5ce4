-- CreateTable
CREATE TABLE "roll_agreement" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "order_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "lot" TEXT NOT NULL,
    "roll" TEXT NOT NULL,
    "agreed_with" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "recorded_by_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "roll_agreement_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "roll_agreement_order_id_lot_roll_key" ON "roll_agreement"("order_id", "lot", "roll");
