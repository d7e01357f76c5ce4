import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { acceptanceOf } from "@/lib/domain/calibration/acceptance";
import type { AcceptanceCheck } from "@/lib/domain/calibration/acceptance-check";
import type { Findings } from "@/lib/domain/calibration/findings";
import type { ParentInput } from "@/lib/domain/calibration/parent";
import { readCalibration } from "@/lib/domain/calibration/read-calibration";
import type { CalibrationRecord, CalibrationSource, Route } from "@/lib/domain/calibration/types";

type NewCalibration = {
  readonly equipmentId: string;
  readonly certificate: string;
  readonly itemSerial: string;
  readonly issuer: string;
  readonly accreditation: string;
  readonly route: Route;
  readonly justification: string;
  readonly performedOn: string;
  readonly dueOn: string;
  readonly scale: string;
  readonly conditions: string;
  readonly traceabilityStatement: string;
  readonly fromCelsius: number | null;
  readonly toCelsius: number | null;
  readonly findings: Findings;
  readonly source: CalibrationSource;
  readonly providerId: string | null;
  readonly documentId: string | null;
  readonly inHouseCertificateId: string | null;
  /** JSON text. */
  readonly differences: string;
  readonly parents: readonly ParentInput[];
  readonly recordedById: string;
  readonly recordedAt: Date;
};

const midnight = (day: string): Date => new Date(`${day}T00:00:00Z`);
const dayOrNull = (day: string): Date | null => (day === "" ? null : midnight(day));

const parentRow = (parent: ParentInput, index: number) => ({
  ...parent,
  position: index + 1,
  performedOn: dayOrNull(parent.performedOn),
  validUntil: dayOrNull(parent.validUntil),
});

/** The parents in one statement: one that stands below another may come in any order within it. */
export const insertCalibration = (tx: Tx, { parents, ...calibration }: NewCalibration) =>
  tx.calibration.create({
    data: {
      ...calibration,
      performedOn: midnight(calibration.performedOn),
      dueOn: midnight(calibration.dueOn),
      findings: JSON.stringify(calibration.findings),
      parents: { createMany: { data: parents.map(parentRow) } },
    },
    select: { id: true },
  });

const withDecisions = { decisions: { orderBy: { id: "asc" } } } as const;
type Row = Awaited<ReturnType<typeof rowsOf>>[number];

const rowsOf = (tx: Tx, equipmentId: string) =>
  tx.calibration.findMany({
    where: { equipmentId },
    orderBy: [{ performedOn: "desc" }, { recordedAt: "desc" }],
    include: withDecisions,
  });

const readRecord = (row: Row): CalibrationRecord => ({
  ...readCalibration(row),
  source: row.source as CalibrationSource,
  itemSerial: row.itemSerial,
  scale: row.scale,
  conditions: row.conditions,
  traceabilityStatement: row.traceabilityStatement,
  justification: row.justification,
  fromCelsius: row.fromCelsius,
  toCelsius: row.toCelsius,
  providerId: row.providerId,
  documentId: row.documentId,
  inHouseCertificateId: row.inHouseCertificateId,
  recordedById: row.recordedById,
  recordedAt: row.recordedAt,
  acceptance: acceptanceOf(row.decisions),
});

/** Newest first, accepted, waiting or rejected. */
export const loadCalibrationsOf = async (tx: Tx, equipmentId: string): Promise<CalibrationRecord[]> =>
  (await rowsOf(tx, equipmentId)).map(readRecord);

/** One, with its decisions and what it stands on; null where it is not here. */
export const loadCalibration = async (tx: Tx, id: string) => {
  const row = isUuid(id)
    ? await tx.calibration.findUnique({
        where: { id },
        include: { ...withDecisions, parents: { orderBy: { position: "asc" } } },
      })
    : null;
  return row && { calibration: readRecord(row), decisions: row.decisions, parents: row.parents, row };
};

/** Oldest first, of everything that was accepted: for lists, where each takes the one in force. */
export const loadAcceptedCalibrations = async (tx: Tx): Promise<CalibrationRecord[]> =>
  (
    await tx.calibration.findMany({
      orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }],
      include: withDecisions,
    })
  )
    .map(readRecord)
    .filter(({ acceptance }) => acceptance === "accepted");

export const insertCalibrationDecision = (
  tx: Tx,
  fields: {
    readonly calibrationId: string;
    readonly decision: "accepted" | "rejected";
    readonly checks: readonly AcceptanceCheck[];
    readonly reason: string;
    readonly decidedById: string;
    readonly decidedAt: Date;
  },
) => tx.calibrationDecision.create({ data: { ...fields, checks: JSON.stringify(fields.checks) } });
