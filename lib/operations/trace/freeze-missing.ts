import { z } from "zod";
import { unfrozenCertificates } from "@/lib/data/sql/unfrozen-certificates";
import { freezeChain } from "@/lib/data/trace/freeze-chain";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { traceEvents } from "@/lib/domain/trace/events";
import { defineOperation } from "../operation";

/** Certificates frozen in one go; whoever calls asks again while there are more. */
const atOnce = 50;

/**
 * Freezes the chains of certificates that were signed off before chains were kept, from the same records, which never
 * change. They carry the moment of this act, so that a page can say they were frozen later. Refused where none is left.
 */
export const freezeMissingChains = defineOperation({
  name: "trace/freeze-missing",
  permission: "system",
  input: z.strictObject({}),
  perform: async ({ tx, now }) => {
    const missing = (await unfrozenCertificates(tx)).slice(0, atOnce);
    if (missing.length === 0)
      throw new Refused({
        code: "rule",
        message: "Every certificate has its chain: there is nothing to freeze.",
      });
    for (const { id } of missing) await freezeChain(tx, id, now);
    const certificates = missing.map(({ number }) => number);
    return {
      value: { certificates },
      events: [eventOf(traceEvents.frozenLater, "chains", { certificates })],
    };
  },
});
