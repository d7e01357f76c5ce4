import type { Tx } from "../in-scope";

/** What is asked for and nobody has decided, the longest waiting first. */
export const askedAmendments = async (tx: Tx, limit: number) => {
  const where = { decision: null };
  const rows = await tx.amendment.findMany({ where, orderBy: { askedAt: "asc" }, take: limit });
  const certificates = await tx.certificate.findMany({
    where: { id: { in: rows.map(({ certificateId }) => certificateId) } },
    select: { id: true, number: true },
  });
  return {
    count: rows.length < limit ? rows.length : await tx.amendment.count({ where }),
    asked: rows.map(({ certificateId, kind, reason, askedAt }) => ({
      number: certificates.find(({ id }) => id === certificateId)?.number ?? "",
      ...{ kind, reason, askedAt },
    })),
  };
};
