import { loadOfferToAnswer } from "@/lib/data/agreement/agreement-store";
import { findAgreeLink } from "@/lib/data/agreement/link-store";
import { AgreeByLinkInput } from "@/lib/domain/agreement/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";
import { takeAnswer } from "./take-answer";

/** Whoever holds the link of the mail answers, without an account. Unknown, over and used look the same. */
export const agreeByLink = defineOperation({
  name: "agreement/agree-by-link",
  permission: "system",
  input: AgreeByLinkInput,
  perform: async (context, { token, name, ...input }) => {
    const link = await findAgreeLink(context.tx, token, context.now);
    const offer = link && (await loadOfferToAnswer(context.tx, { id: link.quotationId }));
    if (!offer || offer.isAnswered)
      throw new Refused({
        code: "not-found",
        message: "This link opens nothing any more. Nothing was stored.",
      });
    return takeAnswer(context, offer, input, { cameBy: "link", saidByName: name, saidById: null });
  },
});
