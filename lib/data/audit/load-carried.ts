import type { Carried } from "@/lib/domain/audit/carried-checkpoints";
import type { Tx } from "../in-scope";
import { certificateCheckpoints } from "../sql/certificate-checkpoints";

/** The checkpoints of all certificates that carry one, each with what the log has at its place now. */
export const loadCarried = async (tx: Tx): Promise<readonly Carried[]> =>
  (await certificateCheckpoints(tx)).map(({ number, sequence, hash, found }) => ({
    certificate: number,
    checkpoint: { sequence: Number(sequence), hash },
    found,
  }));
