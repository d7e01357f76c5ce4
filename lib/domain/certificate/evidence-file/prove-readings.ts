import { sameBytes } from "@/lib/domain/audit/chain";
import { blocksPreimage, leafPreimage, rootPreimage } from "@/lib/domain/evidence/block-preimage";
import { bytesOfFloats, bytesOfPolarity } from "@/lib/domain/evidence/readings-bytes";
import type { EvidencePart } from "./evidence-file";

/** SHA-256 over these bytes joined; a browser's answers later. */
export type AsyncDigest = (parts: readonly Uint8Array[]) => Promise<Uint8Array>;

const bytesOfHex = (text: string): Uint8Array =>
  Uint8Array.from(text.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));

type Block = EvidencePart["blocks"][number];
type Channel = EvidencePart["evidence"]["scans"]["channels"][number];

const leafIn = (own: Block["channels"][number], readings: Channel, from: number) => {
  const to = from + own.count;
  const values = Float64Array.from(readings.microvolts.slice(from, to));
  for (const at of own.negativeZeros ?? []) values[at] = -0;
  return leafPreimage({
    channel: own.channel,
    count: own.count,
    salt: bytesOfHex(own.salt),
    times: bytesOfFloats(Float64Array.from(readings.seconds.slice(from, to))),
    values: bytesOfFloats(values),
    polarity: bytesOfPolarity(Int8Array.from(readings.polarity.slice(from, to))),
  });
};

/**
 * Whether the readings of a part are those that came in by its blocks, no more and no fewer: null, or the first place
 * where they are not.
 */
export const proveReadings = async (part: EvidencePart, digest: AsyncDigest): Promise<string | null> => {
  const taken = new Map<string, number>();
  const roots: Uint8Array[] = [];
  for (const block of part.blocks) {
    const leaves = block.leaves.map(bytesOfHex);
    for (const own of block.channels) {
      const readings = part.evidence.scans.channels.find(({ channel }) => channel === own.channel);
      if (!readings) return `channel ${own.channel} of block ${block.sequence} is missing`;
      const from = taken.get(own.channel) ?? 0;
      const leaf = await digest(leafIn(own, readings, from));
      const listed = leaves[own.ordinal];
      if (!listed || !sameBytes(leaf, listed))
        return `the readings of channel ${own.channel} are not those of block ${block.sequence}`;
      taken.set(own.channel, from + own.count);
    }
    roots.push(await digest(rootPreimage(leaves)));
  }
  if (!sameBytes(await digest(blocksPreimage(roots)), bytesOfHex(part.blocksDigest)))
    return "the blocks are not those that the evaluation saw";
  const beyond = part.evidence.scans.channels.find(
    ({ channel, seconds }) => (taken.get(channel) ?? 0) !== seconds.length,
  );
  return beyond ? `channel ${beyond.channel} has readings that came in by no block` : null;
};
