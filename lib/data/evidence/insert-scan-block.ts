import { randomBytes, randomUUID } from "node:crypto";
import type { Tx } from "@/lib/data/in-scope";
import { bytesOfFloats, bytesOfPolarity } from "@/lib/domain/evidence/readings-bytes";
import { joinLeaves, leafOf, rootOf, saltLength } from "./block-hash";

export type IncomingChannel = {
  readonly channel: string;
  /** Whose sensor it is; null = the laboratory's (references, zero). */
  readonly customerId: string | null;
  /** Seconds since the run's start, indicated emf in microvolt, +1 or −1: of one length, finite. */
  readonly times: Float64Array;
  readonly values: Float64Array;
  readonly polarity: Int8Array;
};

export type IncomingBlock = {
  readonly runId: string;
  /** 1, 2, 3 … within the run. */
  readonly sequence: number;
  readonly source: "file" | "typed";
  readonly fileName: string | null;
  /** Of the bytes received. */
  readonly sourceSha256: Uint8Array;
  readonly channels: readonly IncomingChannel[];
  readonly receivedById: string;
  readonly receivedAt: Date;
};

export type StoredBlock = {
  readonly id: string;
  readonly sequence: number;
  readonly readingCount: number;
  readonly root: Uint8Array;
};

const own = (bytes: Uint8Array): Uint8Array<ArrayBuffer> => new Uint8Array(bytes);

/** What the database would not notice. A caller that gets here with it has a defect; people are told earlier. */
const demandReadings = ({ channel, times, values, polarity }: IncomingChannel): void => {
  if (times.length === 0 || times.length !== values.length || times.length !== polarity.length)
    throw new RangeError(`Channel ${channel}: times, values and polarity must have one length, at least 1.`);
  if (!times.every(Number.isFinite) || !values.every(Number.isFinite))
    throw new RangeError(`Channel ${channel}: a reading is not a finite number.`);
  if (!polarity.every((sign) => sign === 1 || sign === -1))
    throw new RangeError(`Channel ${channel}: polarity is +1 or −1.`);
};

const channelRow = (incoming: IncomingChannel) => {
  demandReadings(incoming);
  const bytes = {
    channel: incoming.channel,
    count: incoming.times.length,
    times: bytesOfFloats(incoming.times),
    values: bytesOfFloats(incoming.values),
    polarity: bytesOfPolarity(incoming.polarity),
    salt: own(randomBytes(saltLength)),
  };
  return { ...bytes, customerId: incoming.customerId, leaf: leafOf(bytes) };
};

/** Stores a block of scans bit for bit, with the hash of each channel and of the whole. */
export const insertScanBlock = async (tx: Tx, block: IncomingBlock): Promise<StoredBlock> => {
  const { channels, sourceSha256, ...head } = block;
  if (new Set(channels.map(({ channel }) => channel)).size !== channels.length)
    throw new RangeError("A channel stands twice in one block.");
  const rows = channels.map(channelRow);
  const leaves = rows.map((row) => row.leaf);
  const stored = {
    id: randomUUID(),
    sequence: block.sequence,
    readingCount: rows.reduce((sum, row) => sum + row.count, 0),
    root: rootOf(leaves),
  };
  await tx.scanBlock.create({
    data: { ...head, ...stored, sourceSha256: own(sourceSha256), leaves: joinLeaves(leaves) },
  });
  // One statement per channel: a block can hold 64 MB, and a statement is held in memory several times over.
  for (const [ordinal, row] of rows.entries())
    await tx.scanBlockChannel.create({ data: { ...row, blockId: stored.id, runId: block.runId, ordinal } });
  return stored;
};
