-- AlterTable
ALTER TABLE "equipment" ALTER COLUMN "state" SET DEFAULT 'received';

-- AlterTable
ALTER TABLE "laboratory" ADD COLUMN     "service_policy" TEXT NOT NULL DEFAULT '{}';
