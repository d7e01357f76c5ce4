import type { Tx } from "@/lib/data/in-scope";

/**
 * How many certificates a customer has, and how many bytes their documents have together: added up where they lie. The
 * customer is named, although it sees no others: by the policies alone every row would be looked at.
 */
export const certificateSum = async (
  tx: Tx,
  customerId: string,
): Promise<{ readonly count: number; readonly size: number }> => {
  const [sum] = await tx.$queryRaw<{ count: number; size: number }[]>`
    SELECT (SELECT count(*)::int FROM certificate WHERE customer_id = ${customerId}::uuid) AS count,
           (SELECT coalesce(sum(octet_length(bytes)), 0)::float8 FROM certificate_file
             WHERE customer_id = ${customerId}::uuid AND media_type = 'application/pdf') AS size`;
  return sum ?? { count: 0, size: 0 };
};
