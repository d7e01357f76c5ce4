import { insertWithdrawal, loadAuthorisation } from "@/lib/data/authorisation/authorisation-store";
import { lockName } from "@/lib/data/sql/lock-name";
import { eventOf } from "@/lib/domain/audit/define-event";
import { authorisationState } from "@/lib/domain/authorisation/authorisation";
import { authorisationEvents } from "@/lib/domain/authorisation/events";
import { WithdrawalInput } from "@/lib/domain/authorisation/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** It ends at this moment; what was signed by it before stays signed. */
export const withdrawAuthorisation = defineOperation({
  name: "authorisation/withdraw",
  permission: "person.authorise",
  input: WithdrawalInput,
  perform: async ({ actor, now, tx }, { authorisationId, reason }) => {
    await lockName(tx, `authorisation ${authorisationId}`);
    const held = await loadAuthorisation(tx, authorisationId);
    if (!held) throw new Refused({ code: "not-found", message: "This authorisation is not here." });
    const state = authorisationState(held, now);
    if (state === "withdrawn" || state === "ended")
      throw new Refused({
        code: "wrong-state",
        message: "This authorisation is over already. Nothing was changed.",
      });
    await insertWithdrawal(tx, {
      authorisationId,
      reason,
      withdrawnById: personIdOf(actor),
      withdrawnAt: now,
    });
    const { personId, activity } = held;
    return {
      value: { id: authorisationId },
      events: [eventOf(authorisationEvents.withdrawn, authorisationId, { personId, activity })],
    };
  },
});
