import { inScope } from "@/lib/data/in-scope";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { endingFact, endingGroundsFact } from "./facts";
import { type Facts, laboratory } from "./step";

/** What became of the certificates, by their numbers: each ending is to be told by the log as well, with its grounds. */
export const noteEndings = async (facts: Facts, numbers: ReadonlyMap<string, string>): Promise<void> => {
  const numberOf = (id: string): string => numbers.get(id) ?? id;
  const endings = await inScope(laboratory, (tx) => tx.certificateEnding.findMany());
  for (const { certificateId, kind, reason, successorId, decidedById, decidedAt } of endings) {
    const number = numberOf(certificateId);
    facts.set(...endingFact(number, kind, successorId === null ? "" : numberOf(successorId)));
    const grounds = { decidedAt: decidedAt.toISOString(), reasonSha256: sha256Hex(reason) };
    facts.set(...endingGroundsFact(number, decidedById, grounds));
  }
};
