-- DropIndex
DROP INDEX "certificate_part_certificate_id_sensor_id_set_kind_key";

-- CreateIndex
CREATE UNIQUE INDEX "certificate_part_certificate_id_sensor_id_set_kind_run_id_key" ON "certificate_part"("certificate_id", "sensor_id", "set_kind", "run_id");
