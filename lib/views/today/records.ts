import type { Tx } from "@/lib/data/in-scope";
import type { Waiting } from "./waiting";

const shown = 6;

/** Signed off, numbered, and not rendered yet. */
export const certificatesPending = async (tx: Tx): Promise<Waiting> => {
  const where = { files: { none: {} } };
  const certificates = await tx.certificate.findMany({
    where,
    orderBy: { signedAt: "asc" },
    take: shown,
    select: { id: true, number: true },
  });
  return {
    count: await tx.certificate.count({ where }),
    items: certificates.map(({ id, number }) => ({
      key: id,
      label: number,
      detail: "signed off, its document is being made",
      href: `/certificates/${number}`,
      state: "pending",
    })),
  };
};
