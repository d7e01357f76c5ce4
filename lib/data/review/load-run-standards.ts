import type { Tx } from "../in-scope";

type RunOfStandards = {
  readonly voltmeterId: string;
  readonly scannerId: string;
  readonly places: readonly { readonly equipmentId: string | null; readonly junctionId: string }[];
};

/** The references, the voltmeter, the scanner and the junctions of a run, with every calibration on record. */
export const loadRunStandards = (tx: Tx, run: RunOfStandards) =>
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
