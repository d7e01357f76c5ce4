import type { EntryFigures } from "@/lib/domain/nonconformity/figures";
import { certificatesOfRuns } from "../certificate/certificates-of-runs";
import type { Tx } from "../in-scope";

type Entry = { readonly saidAt: Date; readonly figures: EntryFigures };

/** Of the runs an entry lists as not signed off: the certificates signed after it, which its own list cannot name. */
export const signedSince = async (tx: Tx, { figures, saidAt }: Entry): Promise<readonly string[]> => {
  if ((figures.runs ?? []).length === 0) return [];
  const runs = await tx.run.findMany({
    where: { number: { in: figures.runs ?? [] } },
    select: { id: true },
  });
  const rows = await tx.certificate.findMany({
    where: {
      id: {
        in: await certificatesOfRuns(
          tx,
          runs.map(({ id }) => id),
        ),
      },
      signedAt: { gte: saidAt },
      number: { notIn: (figures.certificates ?? []).map(({ number }) => number) },
    },
    orderBy: { number: "asc" },
    select: { number: true },
  });
  return rows.map(({ number }) => number);
};
