-- AlterTable
ALTER TABLE "hold_release" ADD COLUMN     "awaits_another" BOOLEAN NOT NULL DEFAULT false;
