-- AlterTable
ALTER TABLE "sensor" ADD COLUMN     "is_invoiced" BOOLEAN NOT NULL DEFAULT false;
