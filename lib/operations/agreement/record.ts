import { loadOfferToAnswer } from "@/lib/data/agreement/agreement-store";
import { RecordAgreementInput } from "@/lib/domain/agreement/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { takeAnswer } from "./take-answer";

/** What came on paper or by telephone, written down by the desk with how it came. */
export const recordAgreement = defineOperation({
  name: "agreement/record",
  permission: "order.record",
  input: RecordAgreementInput,
  perform: async (context, { quotation, name, ...input }) => {
    const offer = await loadOfferToAnswer(context.tx, { number: quotation });
    if (!offer)
      throw new Refused({ code: "not-found", message: "This offer is not here. Nothing was changed." });
    return takeAnswer(context, offer, input, {
      ...{ cameBy: "desk", saidByName: name, saidById: personIdOf(context.actor) },
    });
  },
});
