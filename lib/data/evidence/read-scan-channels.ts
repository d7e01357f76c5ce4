import type { Tx } from "@/lib/data/in-scope";
import { floatsOfBytes, polarityOfBytes } from "@/lib/domain/evidence/readings-bytes";

export type Readings = {
  readonly times: Float64Array;
  readonly values: Float64Array;
  readonly polarity: Int8Array;
};

export type ReadingsFilter = {
  readonly channels?: readonly string[];
  /** Only the blocks that were there when something was decided: sequence ≤ this. */
  readonly upToSequence?: number;
};

type Part = { readonly times: Uint8Array; readonly values: Uint8Array; readonly polarity: Uint8Array };

const join = (parts: readonly Uint8Array[]): Uint8Array => {
  const joined = new Uint8Array(parts.reduce((sum, part) => sum + part.byteLength, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.byteLength;
  }
  return joined;
};

const joinParts = (parts: readonly Part[]): Readings => ({
  times: floatsOfBytes(join(parts.map((part) => part.times))),
  values: floatsOfBytes(join(parts.map((part) => part.values))),
  polarity: polarityOfBytes(join(parts.map((part) => part.polarity))),
});

/**
 * The readings of a run by channel, blocks joined in order of sequence, exactly as they came in. A customer's
 * transaction sees its own channels and the laboratory's, nobody else's.
 */
export const loadReadings = async (
  tx: Tx,
  runId: string,
  { channels, upToSequence }: ReadingsFilter = {},
): Promise<ReadonlyMap<string, Readings>> => {
  const rows = await tx.scanBlockChannel.findMany({
    where: {
      runId,
      channel: channels ? { in: [...channels] } : undefined,
      block: upToSequence === undefined ? undefined : { sequence: { lte: upToSequence } },
    },
    select: { channel: true, times: true, values: true, polarity: true },
    orderBy: [{ block: { sequence: "asc" } }, { ordinal: "asc" }],
  });
  const parts = new Map<string, Part[]>();
  for (const row of rows) {
    const known = parts.get(row.channel);
    if (known) known.push(row);
    else parts.set(row.channel, [row]);
  }
  return new Map([...parts].map(([channel, found]) => [channel, joinParts(found)]));
};
