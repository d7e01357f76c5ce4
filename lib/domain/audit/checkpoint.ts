import { z } from "zod";

/**
 * Where the audit log stood at a moment, kept outside of it: its last event and that event's hash, which stands for
 * every event before. Whoever holds one can tell later whether the log was rewritten since, chain, head and all.
 */
export const Checkpoint = z.strictObject({
  sequence: z.int().positive(),
  /** SHA-256, hex. */
  hash: z.string().regex(/^[0-9a-f]{64}$/),
});
export type Checkpoint = z.infer<typeof Checkpoint>;

/** different: another event stands there, thus a log that was rewritten; missing: the log ends before it. */
export type HeldCheckpoint = "same" | "different" | "missing";

/** `found`: the hash of the event with the checkpoint's number as the log has it now, hex; null where it has none. */
export const holdCheckpoint = ({ hash }: Checkpoint, found: string | null): HeldCheckpoint => {
  if (found === null) return "missing";
  return found === hash ? "same" : "different";
};
