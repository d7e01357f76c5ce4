import { verifyChain } from "@/lib/data/audit/verify-chain";
import { type ChainHead, describeBreak, type StoredEvent } from "@/lib/domain/audit/chain";
import { describeEvent } from "@/lib/domain/audit/describe";
import { noteEvent } from "./facts";
import { Broken, counted, type Facts } from "./step";

const noNames = (): undefined => undefined;

const readEvents = (facts: Facts) => (events: readonly StoredEvent[]) => {
  for (const event of events) {
    if (!describeEvent(event, noNames).understood)
      throw new Broken(
        `audit event ${event.sequence}`,
        `this version does not know ${event.action} with what it says`,
      );
    noteEvent(facts, event);
  }
};

/** Links the log anew from its beginning, or from where it was verified before, and reads what it says of records. */
export const rederiveChain = async (
  facts: Facts,
  from?: ChainHead,
): Promise<{ readonly head: ChainHead; readonly said: string }> => {
  const verdict = await verifyChain({ from, onPage: readEvents(facts) });
  if (verdict.kind === "broken")
    throw new Broken(`audit event ${verdict.broken.sequence}`, describeBreak(verdict.broken));
  return { head: verdict.head, said: `${counted(verdict.events, "event")} linked` };
};
