import {
  insertRevision,
  loadRevisions,
  lockProcedures,
  procedureIdOf,
} from "@/lib/data/procedure/procedure-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideDraft } from "@/lib/domain/procedure/decide";
import { procedureEvents } from "@/lib/domain/procedure/events";
import { renamedBudget } from "@/lib/domain/procedure/renamed-budget";
import { DraftRevisionInput } from "@/lib/domain/procedure/schema";
import { revisionName } from "@/lib/domain/procedure/types";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The next revision, begun as a copy of the current one. */
export const draftRevision = defineOperation({
  name: "procedure/draft-revision",
  permission: "procedure.draft",
  input: DraftRevisionInput,
  perform: async ({ actor, now, tx }, { key }) => {
    await lockProcedures(tx);
    const procedureId = await procedureIdOf(tx, key);
    const revisions = await loadRevisions(tx, key);
    const current = demand(decideDraft(revisions));
    const revision = Math.max(...revisions.map((one) => one.revision)) + 1;
    const id = await insertRevision(tx, {
      procedureId,
      revision,
      budgetInputs: renamedBudget(current.budgetInputs, revisionName({ title: current.title, revision })),
      gatePolicy: current.gatePolicy,
      recordedById: personIdOf(actor),
      recordedAt: now,
    });
    const payload = { key, revision, copyOf: revisionName(current) };
    return { value: { id, key, revision }, events: [eventOf(procedureEvents.drafted, key, payload)] };
  },
});
