import type { Tx } from "../in-scope";

/** A document is made in seconds: one that is not among so many of the newest lies in the list, not in today's work. */
const newest = 500;

/** Signed off, numbered, and not rendered yet; the longest waiting first. */
export const pendingCertificates = (
  tx: Tx,
  limit: number,
): Promise<{ readonly number: string; readonly count: number }[]> =>
  tx.$queryRaw<{ number: string; count: number }[]>`
    SELECT c.number, (count(*) OVER ())::int AS count
      FROM (SELECT id, number, signed_at FROM certificate ORDER BY signed_at DESC, id DESC LIMIT ${newest}) AS c
     WHERE NOT EXISTS (SELECT FROM certificate_file f WHERE f.certificate_id = c.id)
     ORDER BY c.signed_at LIMIT ${limit}`;
