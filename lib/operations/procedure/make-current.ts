import { hex } from "@/lib/data/hex";
import {
  loadRevision,
  lockProcedures,
  saveCurrent,
  withdrawCurrent,
} from "@/lib/data/procedure/procedure-store";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideCurrent } from "@/lib/domain/procedure/decide";
import { procedureEvents } from "@/lib/domain/procedure/events";
import { MakeCurrentInput } from "@/lib/domain/procedure/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** From now on runs follow this revision; the former one is withdrawn in the same moment. */
export const makeCurrent = defineOperation({
  name: "procedure/make-current",
  permission: "procedure.approve",
  input: MakeCurrentInput,
  perform: async ({ actor, now, tx }, { id, version }) => {
    await lockProcedures(tx);
    const found = await loadRevision(tx, id);
    if (!found) throw new Refused({ code: "not-found", message: "This revision is not here." });
    const { key, revision, budgetInputs } = demand(decideCurrent(found, personIdOf(actor)));
    const withdrawn = await withdrawCurrent(tx, key, now);
    await saveCurrent(tx, { id, version }, { currentFrom: now, currentById: personIdOf(actor) });
    const contentSha256 = hex(sha256(new TextEncoder().encode(budgetInputs)));
    return {
      value: { key, revision },
      events: [eventOf(procedureEvents.madeCurrent, key, { key, revision, withdrawn, contentSha256 })],
    };
  },
});
