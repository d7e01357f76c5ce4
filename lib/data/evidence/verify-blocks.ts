import { inScope, type Tx } from "@/lib/data/in-scope";
import { sameBytes } from "@/lib/domain/audit/chain";
import { joinLeaves, leafOf, rootOf } from "./block-hash";

export type BlocksVerdict =
  | { readonly kind: "whole"; readonly blocks: number; readonly readings: number }
  | { readonly kind: "broken"; readonly record: string; readonly reason: string };

const laboratory = { kind: "laboratory" } as const;

export type BlockHead = {
  readonly id: string;
  readonly runId: string;
  readonly sequence: number;
  readonly root: Uint8Array;
};

const blockHeads = (): Promise<readonly BlockHead[]> =>
  inScope(laboratory, (tx) =>
    tx.scanBlock.findMany({
      select: { id: true, runId: true, sequence: true, root: true },
      orderBy: [{ runId: "asc" }, { sequence: "asc" }],
    }),
  );

const blockFault = async (tx: Tx, id: string): Promise<string | number> => {
  const { channels, ...block } = await tx.scanBlock.findUniqueOrThrow({
    where: { id },
    include: { channels: { orderBy: { ordinal: "asc" } } },
  });
  const leaves: Uint8Array[] = [];
  for (const [place, channel] of channels.entries()) {
    if (channel.ordinal !== place) return `channel ${place} of the block is missing`;
    const leaf = leafOf(channel);
    if (!sameBytes(leaf, channel.leaf))
      return `the readings of channel ${channel.channel} are not as received`;
    leaves.push(leaf);
  }
  const readings = channels.reduce((sum, channel) => sum + channel.count, 0);
  if (!sameBytes(joinLeaves(leaves), block.leaves)) return "the leaves are not those of its channels";
  if (!sameBytes(rootOf(leaves), block.root)) return "the root is not that of its leaves";
  return readings === block.readingCount ? readings : "the number of readings is not that of its channels";
};

/**
 * Re-hashes every block of every run, one at a time, and names the first that is not as received. Opens its own
 * short transactions: call it outside of one.
 */
export const verifyBlocks = async (onBlock?: (block: BlockHead) => void): Promise<BlocksVerdict> => {
  const heads = await blockHeads();
  let readings = 0;
  let previous: BlockHead | undefined;
  for (const head of heads) {
    const expected = previous?.runId === head.runId ? previous.sequence + 1 : 1;
    const record = `scan block ${head.sequence} of run ${head.runId}`;
    if (head.sequence !== expected)
      return { kind: "broken", record, reason: `block ${expected} is missing before it` };
    const found = await inScope(laboratory, (tx) => blockFault(tx, head.id));
    if (typeof found === "string") return { kind: "broken", record, reason: found };
    readings += found;
    onBlock?.(head);
    previous = head;
  }
  return { kind: "whole", blocks: heads.length, readings };
};
