import { hex } from "@/lib/data/hex";
import { loadRevision, lockProcedures, saveDraft } from "@/lib/data/procedure/procedure-store";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { changedDraft } from "@/lib/domain/procedure/changed-draft";
import { decideChange } from "@/lib/domain/procedure/decide";
import { procedureEvents } from "@/lib/domain/procedure/events";
import { ChangeDraftInput } from "@/lib/domain/procedure/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Part of a draft; whoever changes it cannot make it current. */
export const changeDraft = defineOperation({
  name: "procedure/change-draft",
  permission: "procedure.draft",
  input: ChangeDraftInput,
  perform: async ({ actor, now, tx }, input) => {
    await lockProcedures(tx);
    const found = await loadRevision(tx, input.id);
    if (!found) throw new Refused({ code: "not-found", message: "This revision is not here." });
    const { draft, changed } = demand(changedDraft(demand(decideChange(found)), input));
    await saveDraft(tx, input, { ...draft, recordedById: personIdOf(actor), recordedAt: now });
    const contentSha256 = hex(sha256(new TextEncoder().encode(draft.budgetInputs)));
    const { key, revision } = found;
    return {
      value: { key, revision },
      events: [
        eventOf(procedureEvents.draftChanged, key, { key, revision, changed: [...changed], contentSha256 }),
      ],
    };
  },
});
