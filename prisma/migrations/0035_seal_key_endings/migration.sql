-- DropIndex
DROP INDEX "seal_key_ending_seal_key_id_key";

-- CreateIndex
CREATE UNIQUE INDEX "seal_key_ending_seal_key_id_kind_key" ON "seal_key_ending"("seal_key_id", "kind");
