import { inSnapshot } from "@/lib/data/in-scope";
import { auditHeadRow } from "@/lib/data/sql/audit-head";

/** Throws when the database does not answer, or when it is not ours. */
export const isHealthyView = async (): Promise<void> => {
  const head = await inSnapshot({ kind: "laboratory" }, auditHeadRow);
  if (!head) throw new Error("the audit chain has no head: this is not a migrated database");
};
