-- AlterTable
ALTER TABLE "laboratory" ADD COLUMN     "sensor_retention_days" INTEGER NOT NULL DEFAULT 30;
