import {
  insertProcedure,
  insertRevision,
  loadCurrentRevision,
  lockProcedures,
} from "@/lib/data/procedure/procedure-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { procedureEvents } from "@/lib/domain/procedure/events";
import { renamedBudget } from "@/lib/domain/procedure/renamed-budget";
import { RecordProcedureInput } from "@/lib/domain/procedure/schema";
import { revisionName } from "@/lib/domain/procedure/types";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Another procedure, as a draft to be verified; nothing can follow it yet. */
export const recordProcedure = defineOperation({
  name: "procedure/record",
  permission: "procedure.draft",
  input: RecordProcedureInput,
  perform: async ({ actor, now, tx }, { key, title, copyOf }) => {
    await lockProcedures(tx);
    const refused = (field: string, message: string) =>
      new Refused({
        code: "invalid",
        message: "The procedure was not recorded.",
        fields: { [field]: message },
      });
    if ((await tx.procedure.count({ where: { key } })) > 0)
      throw refused(
        "key",
        `There is a procedure ${key} already. Choose another name, or draft its next revision.`,
      );
    const copied = await loadCurrentRevision(tx, copyOf);
    if (!copied) throw refused("copyOf", "Choose a procedure that has a current revision.");
    const procedureId = await insertProcedure(tx, key, title);
    const id = await insertRevision(tx, {
      procedureId,
      revision: 1,
      budgetInputs: renamedBudget(copied.budgetInputs, revisionName({ title, revision: 1 })),
      gatePolicy: copied.gatePolicy,
      recordedById: personIdOf(actor),
      recordedAt: now,
    });
    const payload = { key, revision: 1, copyOf: revisionName(copied) };
    return { value: { id, key }, events: [eventOf(procedureEvents.drafted, key, payload)] };
  },
});
