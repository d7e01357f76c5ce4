-- DropIndex
DROP INDEX "calibration_equipment_id_certificate_key";

-- AlterTable
ALTER TABLE "calibration" ADD COLUMN     "differences" TEXT NOT NULL DEFAULT '[]',
ADD COLUMN     "item_serial" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "justification" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE INDEX "calibration_equipment_id_certificate_idx" ON "calibration"("equipment_id", "certificate");
