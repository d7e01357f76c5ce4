import type { Tx } from "@/lib/data/in-scope";

type CheckpointRow = {
  readonly number: string;
  readonly sequence: bigint;
  readonly hash: string;
  readonly found: string | null;
};

/** What each certificate says of the log, and what the log says at that place, of one moment. */
export const certificateCheckpoints = (tx: Tx): Promise<CheckpointRow[]> =>
  tx.$queryRaw`
    SELECT c.number, c.log_sequence AS sequence, c.log_hash AS hash, encode(e.hash, 'hex') AS found
      FROM certificate c LEFT JOIN audit_event e ON e.sequence = c.log_sequence
     WHERE c.log_sequence IS NOT NULL ORDER BY c.log_sequence, c.number`;
