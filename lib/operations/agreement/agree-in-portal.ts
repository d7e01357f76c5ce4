import { loadOfferToAnswer } from "@/lib/data/agreement/agreement-store";
import { AgreeInPortalInput } from "@/lib/domain/agreement/schema";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { takeAnswer } from "./take-answer";

/** Somebody of the customer answers in the portal. */
export const agreeInPortal = defineOperation({
  name: "agreement/agree-in-portal",
  permission: "portal.order",
  scope: "laboratory",
  input: AgreeInPortalInput,
  perform: async (context, { quotation, ...input }) => {
    const { actor, tx } = context;
    const whose = await tx.quotation.findUnique({
      where: { number: quotation },
      select: { customerId: true },
    });
    demandOwn(actor, whose?.customerId);
    const offer = await loadOfferToAnswer(tx, { number: quotation });
    if (!offer || actor.kind !== "customer")
      throw new Refused({ code: "not-found", message: "This is not here. Nothing was changed." });
    return takeAnswer(context, offer, input, {
      ...{ cameBy: "portal", saidByName: actor.name, saidById: personIdOf(actor) },
    });
  },
});
