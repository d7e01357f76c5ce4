import type { ChainHead } from "@/lib/domain/audit/chain";
import { rederiveChain } from "./audit-chain";
import { rederiveCertificates } from "./certificates";
import { rederiveChains } from "./chains";
import { rederiveCharacterisations } from "./characterisations";
import { type Makers, makers } from "./makers";
import { rederivePapers } from "./papers";
import { rederiveResults } from "./results";
import { rederiveBlocks } from "./scan-blocks";
import { rederiveSeals } from "./seals";
import { Broken, counted, type Facts, outcomeOf, type StepOutcome, untold } from "./step";

export type Rederived = { readonly step: string; readonly outcome: StepOutcome };

/**
 * The log and the records say the same. `logged` are the facts up to the head at the start: each must have its record.
 * `known` has those of events appended since as well, so that people may go on working meanwhile.
 */
const compareWithLog = (logged: Facts, known: Facts, recorded: Facts): string => {
  for (const [record, found] of recorded) {
    const said = known.get(record);
    if (said === undefined) throw new Broken(record, "it is there, but the log does not tell of it");
    if (said !== found && said !== untold) throw new Broken(record, `the log says ${said}; the record has ${found}`);
  }
  for (const [record, said] of logged)
    if (!recorded.has(record)) throw new Broken(record, `the log tells of it (${said}), but it is not there`);
  return `${counted(recorded.size, "record")} as the log tells`;
};

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
    ["results", () => rederiveResults(recorded)],
    ["certificates", () => rederiveCertificates(recorded, tools)],
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
