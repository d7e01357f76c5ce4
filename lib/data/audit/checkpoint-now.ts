import type { Checkpoint } from "@/lib/domain/audit/checkpoint";
import { hex } from "../hex";
import type { Tx } from "../in-scope";
import { auditHeadRow } from "../sql/audit-head";

/**
 * The head of the log as it is committed, read without its lock, so that nobody waits for a signature. An event of this
 * transaction would be in it too, which is why they are appended last. None of an empty log.
 */
export const checkpointNow = async (tx: Tx): Promise<{ readonly log?: Checkpoint }> => {
  const head = await auditHeadRow(tx);
  if (!head || head.sequence === 0n) return {};
  return { log: { sequence: Number(head.sequence), hash: hex(head.hash) } };
};
