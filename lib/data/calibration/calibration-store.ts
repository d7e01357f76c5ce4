import type { Tx } from "@/lib/data/in-scope";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import type { Findings } from "@/lib/domain/calibration/findings";
import { readCalibration } from "@/lib/domain/calibration/read-calibration";
import type { Calibration, Route } from "@/lib/domain/calibration/types";

type NewCalibration = {
  readonly equipmentId: string;
  readonly certificate: string;
  readonly issuer: string;
  readonly accreditation: string;
  readonly route: Route;
  readonly performedOn: string;
  readonly dueOn: string;
  readonly findings: Findings;
  readonly recordedById: string | null;
  readonly recordedAt: Date;
};

const midnight = (day: string): Date => new Date(`${day}T00:00:00Z`);

export const insertCalibration = (tx: Tx, calibration: NewCalibration) =>
  refuseDuplicate(
    tx.calibration.create({
      data: {
        ...calibration,
        performedOn: midnight(calibration.performedOn),
        dueOn: midnight(calibration.dueOn),
        findings: JSON.stringify(calibration.findings),
      },
    }),
    "certificate",
    "This certificate is recorded for this equipment already.",
  );

/** Newest first. */
export const loadCalibrationsOf = async (tx: Tx, equipmentId: string): Promise<Calibration[]> =>
  (
    await tx.calibration.findMany({
      where: { equipmentId },
      orderBy: [{ performedOn: "desc" }, { recordedAt: "desc" }],
    })
  ).map(readCalibration);

/** Oldest first, of everything: for lists, where each takes the one in force. */
export const loadAllCalibrations = async (tx: Tx): Promise<Calibration[]> =>
  (await tx.calibration.findMany({ orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }] })).map(
    readCalibration,
  );
