import { floatsOfBytes } from "@/lib/domain/evidence/readings-bytes";
import type { Tx } from "../in-scope";
import { lastTimes } from "../sql/last-times";

/** Second of the run at which each channel's readings end so far. */
export const loadLastSeconds = async (tx: Tx, runId: string): Promise<ReadonlyMap<string, number>> => {
  const ends = new Map<string, number>();
  for (const { channel, last } of await lastTimes(tx, runId)) {
    const [seconds = Number.NEGATIVE_INFINITY] = floatsOfBytes(last);
    ends.set(channel, Math.max(seconds, ends.get(channel) ?? Number.NEGATIVE_INFINITY));
  }
  return ends;
};
