import { z } from "zod";
import { loadInvitation, withdrawInvitation } from "@/lib/data/account/access-link-store";
import { accountEvents } from "@/lib/domain/account/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { defineOperation } from "../operation";

const Which = z.strictObject({ id: z.string().regex(/^[0-9a-f]{64}$/) });
const gone = () =>
  new Refused({ code: "not-found", message: "This invitation was used, withdrawn, or is over already." });

/** By the laboratory, any of them. */
export const withdrawAnyInvitation = defineOperation({
  name: "account/withdraw-invitation",
  permission: "person.manage",
  input: Which,
  perform: async ({ now, tx }, { id }) => {
    if (!(await withdrawInvitation(tx, id, now))) throw gone();
    return { value: { id }, events: [eventOf(accountEvents.invitationWithdrawn, id, {})] };
  },
});

/** By somebody of a customer, those of their own. */
export const withdrawColleagueInvitation = defineOperation({
  name: "account/withdraw-colleague-invitation",
  permission: "portal.manage",
  scope: "laboratory",
  input: Which,
  perform: async ({ actor, now, tx }, { id }) => {
    const invitation = await loadInvitation(tx, id, now);
    demandOwn(actor, invitation?.customerId);
    if (!(await withdrawInvitation(tx, id, now))) throw gone();
    return { value: { id }, events: [eventOf(accountEvents.invitationWithdrawn, id, {})] };
  },
});
