import type { Tx } from "../in-scope";

/** Signed off, numbered, and not rendered yet; the longest waiting first. */
export const pendingCertificates = (
  tx: Tx,
  limit: number,
): Promise<{ readonly number: string; readonly count: number }[]> =>
  tx.$queryRaw<{ number: string; count: number }[]>`
    SELECT c.number, (count(*) OVER ())::int AS count
      FROM certificate_pending p JOIN certificate c ON c.id = p.certificate_id
     ORDER BY c.signed_at LIMIT ${limit}`;
