import { sameBytes } from "@/lib/domain/audit/chain";
import { storedEvidence } from "@/lib/domain/run/stored-evidence";
import { blocksDigest } from "../evidence/blocks-digest";
import type { Tx } from "../in-scope";
import { inputsDigest } from "./inputs-digest";
import type { RunEvidence } from "./load-evidence";
import { loadLastEvaluation } from "./load-last-evaluation";

/** Whether the last evaluation still speaks of the run as it is: the same inputs, to the last bit. */
export const evaluationStanding = async (tx: Tx, loaded: RunEvidence) => {
  const last = await loadLastEvaluation(tx, loaded.run.id);
  if (!last) return { standing: "none", last: null } as const;
  const now = inputsDigest(storedEvidence(loaded.evidence), await blocksDigest(tx, loaded.run.id));
  return { standing: sameBytes(now, last.inputsDigest) ? "current" : "outdated", last } as const;
};
