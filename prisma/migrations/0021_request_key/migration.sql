-- AlterTable
ALTER TABLE "customer_order" ADD COLUMN     "request_key" TEXT;

-- CreateIndex
CREATE UNIQUE INDEX "customer_order_customer_id_request_key_key" ON "customer_order"("customer_id", "request_key");
