import type { ChainHead } from "@/lib/domain/audit/chain";
import { rederiveChain } from "./audit-chain";
import { rederiveCertificates } from "./certificates";
import { rederiveChains } from "./chains";
import { rederiveCharacterisations } from "./characterisations";
import { rederiveCheckpoints } from "./checkpoints";
import { compareWithLog } from "./compare-with-log";
import { type Makers, makers } from "./makers";
import { rederivePapers } from "./papers";
import { rederiveResults } from "./results";
import { rederiveBlocks } from "./scan-blocks";
import { rederiveSeals } from "./seals";
import { type Facts, outcomeOf, type StepOutcome } from "./step";

export type Rederived = { readonly step: string; readonly outcome: StepOutcome };

/** Derives everything anew, step by step, each told as it ends; stops at the first record that is not as it was. */
export const rederiveAll = async (
  tell: (step: Rederived) => void,
  tools: Makers = makers,
): Promise<boolean> => {
  const logged: Facts = new Map();
  const recorded: Facts = new Map();
  let head: ChainHead | undefined;
  const steps: readonly (readonly [name: string, work: () => Promise<string>])[] = [
    [
      "audit log",
      async () => {
        const chain = await rederiveChain(logged);
        head = chain.head;
        return chain.said;
      },
    ],
    ["scan blocks", () => rederiveBlocks(recorded)],
    ["characterisations", rederiveCharacterisations],
    ["results", () => rederiveResults(recorded, tools)],
    ["certificates", () => rederiveCertificates(recorded, tools)],
    ["checkpoints", rederiveCheckpoints],
    ["seals", () => rederiveSeals(recorded, tools)],
    ["chains", rederiveChains],
    ["offers and papers", () => rederivePapers(recorded)],
    [
      "log and records",
      async () => {
        const known: Facts = new Map(logged);
        await rederiveChain(known, head);
        return compareWithLog(logged, known, recorded);
      },
    ],
  ];
  for (const [step, work] of steps) {
    const outcome = await outcomeOf(work);
    tell({ step, outcome });
    if (outcome.kind === "broken") return false;
  }
  return true;
};
