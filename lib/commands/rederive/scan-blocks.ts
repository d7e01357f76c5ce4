import { blocksBehindDigest } from "@/lib/data/evidence/blocks-digest";
import { verifyBlocks } from "@/lib/data/evidence/verify-blocks";
import { inScope } from "@/lib/data/in-scope";
import { noteBlock } from "./facts";
import { Broken, counted, type Facts, laboratory } from "./step";

/** A window was accepted over blocks that were there: its digest is that of the run's first so many. */
const demandWindows = async (): Promise<number> => {
  const windows = await inScope(laboratory, (tx) =>
    tx.stabilityWindow.findMany({
      select: { id: true, runId: true, blocksDigest: true },
      orderBy: { id: "asc" },
    }),
  );
  for (const { id, runId, blocksDigest } of windows)
    if ((await inScope(laboratory, (tx) => blocksBehindDigest(tx, runId, blocksDigest))) === undefined)
      throw new Broken(
        `stability window ${id} of run ${runId}`,
        "the blocks it was accepted over are not those stored",
      );
  return windows.length;
};

/** Hashes the stored readings of every block anew, and the blocks that windows were accepted over. */
export const rederiveBlocks = async (facts: Facts): Promise<string> => {
  const verdict = await verifyBlocks((block) => noteBlock(facts, block));
  if (verdict.kind === "broken") throw new Broken(verdict.record, verdict.reason);
  const windows = await demandWindows();
  return `${counted(verdict.blocks, "block")} with ${counted(verdict.readings, "reading")} hashed, ${counted(windows, "window")} stand on them`;
};
