import { hex } from "../hex";
import type { Tx } from "../in-scope";

type RunOfStandards = {
  readonly voltmeterId: string;
  readonly scannerId: string;
  readonly places: readonly { readonly equipmentId: string | null; readonly junctionId: string }[];
};

const equipmentOf = (tx: Tx, run: RunOfStandards) =>
  tx.equipment.findMany({
    where: {
      id: {
        in: [
          run.voltmeterId,
          run.scannerId,
          ...run.places.flatMap((place) => place.equipmentId ?? []),
          ...run.places.map((place) => place.junctionId),
        ],
      },
    },
    include: {
      // A rejected record may share its certificate's number with the one that followed it.
      calibrations: {
        where: { decisions: { some: { decision: "accepted" } } },
        orderBy: { performedOn: "asc" },
      },
    },
    orderBy: { tag: "asc" },
  });

/** The hashes of the certificates' files; the files themselves are not needed. */
const documentHashes = async (
  tx: Tx,
  equipment: Awaited<ReturnType<typeof equipmentOf>>,
): Promise<ReadonlyMap<string, string>> => {
  const ids = equipment.flatMap(({ calibrations }) =>
    calibrations.flatMap(({ documentId }) => documentId ?? []),
  );
  const documents = await tx.evidenceDocument.findMany({
    where: { id: { in: ids } },
    select: { id: true, sha256: true },
  });
  return new Map(documents.map(({ id, sha256 }) => [id, hex(sha256)]));
};

/**
 * The references, the voltmeter, the scanner and the junctions of a run, with every calibration on record and the hash
 * of its certificate's file where one is kept.
 */
export const loadRunStandards = async (tx: Tx, run: RunOfStandards) => {
  const equipment = await equipmentOf(tx, run);
  const hashes = await documentHashes(tx, equipment);
  return equipment.map((one) => ({
    ...one,
    calibrations: one.calibrations.map((calibration) => ({
      ...calibration,
      documentSha256: hashes.get(calibration.documentId ?? "") ?? null,
    })),
  }));
};
