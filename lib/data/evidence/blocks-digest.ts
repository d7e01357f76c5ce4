import type { Tx } from "@/lib/data/in-scope";
import { sameBytes } from "@/lib/domain/audit/chain";
import { digestOfRoots } from "./block-hash";

const rootsOf = async (tx: Tx, runId: string): Promise<readonly Uint8Array[]> => {
  const blocks = await tx.scanBlock.findMany({
    where: { runId },
    select: { root: true },
    orderBy: { sequence: "asc" },
  });
  return blocks.map((block) => block.root);
};

/** All readings of a run as they stand now, in 32 bytes. */
export const blocksDigest = async (tx: Tx, runId: string): Promise<Uint8Array<ArrayBuffer>> =>
  digestOfRoots(await rootsOf(tx, runId));

/**
 * How many of the run's blocks an earlier digest was taken over, so that what was decided then can be decided again;
 * undefined if it fits none: then the blocks are not what they were.
 */
export const blocksBehindDigest = async (
  tx: Tx,
  runId: string,
  digest: Uint8Array,
): Promise<number | undefined> => {
  const roots = await rootsOf(tx, runId);
  for (let count = roots.length; count >= 0; count -= 1)
    if (sameBytes(digestOfRoots(roots.slice(0, count)), digest)) return count;
  return undefined;
};
