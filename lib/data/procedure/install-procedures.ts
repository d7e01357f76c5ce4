import { canonical } from "@/lib/domain/audit/canonical";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { procedureEvents } from "@/lib/domain/procedure/events";
import { foundingProcedures } from "@/lib/domain/procedure/founding-procedures";
import { hex } from "../hex";
import type { Tx } from "../in-scope";
import { sha256 } from "../sha256";
import { insertProcedure, insertRevision, lockProcedures } from "./procedure-store";

/** The procedures a laboratory begins with, those of them that are not here yet; what happened, for the log. */
export const installProcedures = async (tx: Tx, now: Date): Promise<AuditEvent[]> => {
  await lockProcedures(tx);
  const events: AuditEvent[] = [];
  for (const { key, title, budget, verification } of foundingProcedures) {
    if ((await tx.procedure.count({ where: { key } })) > 0) continue;
    const procedureId = await insertProcedure(tx, key, title);
    const budgetInputs = canonical(budget);
    const whole = { procedureId, revision: 1, budgetInputs, verification, change: "First revision." };
    await insertRevision(tx, { ...whole, recordedById: null, recordedAt: now, currentFrom: now });
    const contentSha256 = hex(sha256(new TextEncoder().encode(budgetInputs)));
    events.push(eventOf(procedureEvents.installed, key, { key, revision: 1, contentSha256 }));
  }
  return events;
};
