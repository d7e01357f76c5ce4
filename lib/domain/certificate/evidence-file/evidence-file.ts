import { z } from "zod";
import { Evidence } from "@/lib/domain/evidence/schema";

/**
 * What the figures of one certificate rest on, for whoever holds the certificate: of each run the part of the evidence
 * that its sensors' results rest on, and by which blocks the readings came, so that they can be held against
 * the laboratory's records without anybody else's readings (decision 0004).
 */

const hash = z.string().regex(/^[0-9a-f]{64}$/);

const Block = z.strictObject({
  sequence: z.int().positive(),
  /** Of every channel of the block, in order; of those that are not here the hash alone. */
  leaves: z.array(hash).min(1),
  channels: z.array(
    z.strictObject({
      channel: z.string().min(1),
      /** Its place among the leaves. */
      ordinal: z.int().nonnegative(),
      salt: z.string().regex(/^[0-9a-f]{32}$/),
      /** Readings of this channel in this block; they stand in the evidence one block after another. */
      count: z.int().nonnegative(),
      /** Which of them are −0 µV, that JSON cannot tell from 0. */
      negativeZeros: z.array(z.int().nonnegative()).optional(),
    }),
  ),
});

/** One evaluation of one run, with the sensors of the certificate that were measured in it. */
const Part = z.strictObject({
  items: z
    .array(z.strictObject({ tag: z.string().min(1), set: z.enum(["as-received", "after-anneal"]) }))
    .min(1),
  run: z.string().min(1),
  evaluation: z.int().positive(),
  engineVersion: z.string().min(1),
  /** As the certificate states it: of the whole run's evidence, which this is a part of. */
  inputsDigest: hash,
  evidence: Evidence,
  /** Digest of all blocks that the evaluation saw, which inputsDigest is taken over. */
  blocksDigest: hash,
  blocks: z.array(Block),
});
export type EvidencePart = z.infer<typeof Part>;

export const EvidenceFile = z.strictObject({
  format: z.literal("emfolio-certificate-evidence"),
  version: z.literal(1),
  /** Number of the certificate. */
  certificate: z.string().min(1),
  parts: z.array(Part).min(1),
});
export type EvidenceFile = z.infer<typeof EvidenceFile>;
