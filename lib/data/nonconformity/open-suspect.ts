import type { AuditEvent } from "@/lib/domain/audit/define-event";
import type { Tx } from "../in-scope";
import { insertEntry, insertNonconformity } from "./insert-nonconformity";
import { loadImpact } from "./load-impact";

/**
 * ISO/IEC 17025 6.4.9: equipment in doubt is nonconforming work until its effect on earlier results was examined. What
 * stands on it is listed at once. One that is open for it already goes on instead;
 * of one that was examined, the effect was of something earlier.
 */
export const openSuspect = async (
  tx: Tx,
  equipment: { readonly id: string; readonly tag: string },
  reason: string,
  by: { readonly openedById: string; readonly openedAt: Date },
): Promise<readonly AuditEvent[]> => {
  const known = await tx.nonconformity.findFirst({
    where: { subjectKind: "equipment", subjectId: equipment.id, state: "open" },
    select: { id: true },
  });
  if (known) return [];
  const opened = await insertNonconformity(tx, {
    kind: "nonconforming-work",
    title: `${equipment.tag} is in doubt`,
    description: reason,
    subjectKind: "equipment",
    subject: { id: equipment.id, name: equipment.tag, customerId: null },
    ...by,
  });
  const window = { from: "", until: "", deltaCelsius: null };
  const figures = await loadImpact(tx, { kind: "equipment", id: equipment.id }, window);
  const certificates = figures.certificates?.length ?? 0;
  const runs = figures.runs?.length ?? 0;
  const text = `Opened with the state of the equipment. On it stand ${certificates} certificates, and ${runs} runs that are not signed off.`;
  const said = { saidById: by.openedById, saidAt: by.openedAt };
  const listed = await insertEntry(
    tx,
    { ...opened, state: "open" },
    { kind: "note", text, figures, ...said },
  );
  return [opened.event, listed];
};
