-- AlterTable
ALTER TABLE "laboratory" ADD COLUMN     "promise_policy" TEXT NOT NULL DEFAULT '{}';
