-- AlterTable
ALTER TABLE "trace_node" ADD COLUMN     "height" INTEGER NOT NULL DEFAULT 0;
