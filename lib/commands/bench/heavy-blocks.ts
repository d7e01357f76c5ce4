import { createHash } from "node:crypto";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import type { EvidencePart } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { blocksPreimage, leafPreimage, rootPreimage } from "@/lib/domain/evidence/block-preimage";
import { bytesOfFloats, bytesOfPolarity } from "@/lib/domain/evidence/readings-bytes";
import type { Evidence } from "@/lib/domain/evidence/schema";

type Channel = Evidence["scans"]["channels"][number];

const leafOf = (
  { channel, seconds, microvolts, polarity }: Channel,
  from: number,
  to: number,
  block: number,
) => {
  // The bench's own, and the same each time; the laboratory's are random.
  const salt = createHash("md5").update(`${channel} ${block}`).digest();
  const leaf = leafPreimage({
    ...{ channel, count: to - from, salt },
    times: bytesOfFloats(Float64Array.from(seconds.slice(from, to))),
    values: bytesOfFloats(Float64Array.from(microvolts.slice(from, to))),
    polarity: bytesOfPolarity(Int8Array.from(polarity.slice(from, to))),
  });
  return { salt: hex(salt), leaf: sha256(...leaf) };
};

/** The blocks that these readings came in by, of so many readings a channel; and their digest. */
export const blocksOf = (
  { scans }: Evidence,
  readings: number,
): Pick<EvidencePart, "blocks" | "blocksDigest"> => {
  const longest = Math.max(...scans.channels.map(({ seconds }) => seconds.length));
  const made = Array.from({ length: Math.ceil(longest / readings) }, (_, at) => {
    const from = at * readings;
    const own = scans.channels.map((channel) => {
      const to = Math.min(from + readings, channel.seconds.length);
      return { channel: channel.channel, count: to - from, ...leafOf(channel, from, to, at + 1) };
    });
    return {
      root: sha256(...rootPreimage(own.map(({ leaf }) => leaf))),
      block: {
        sequence: at + 1,
        leaves: own.map(({ leaf }) => hex(leaf)),
        channels: own.map(({ channel, count, salt }, ordinal) => ({ channel, ordinal, salt, count })),
      },
    };
  });
  return {
    blocks: made.map(({ block }) => block),
    blocksDigest: hex(sha256(...blocksPreimage(made.map(({ root }) => root)))),
  };
};
