import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { isoDay } from "@/lib/domain/calibration/due";
import { decisionState } from "@/lib/domain/furnace/decision-state";
import type { MeasuredInhomogeneity } from "@/lib/domain/furnace/inhomogeneity-test";

type NewTest = {
  readonly sensorId: string | null;
  readonly customerId: string | null;
  readonly equipmentId: string | null;
  readonly celsius: number;
  readonly performedOn: string;
  readonly readings: string;
  readonly evaluation: string;
  readonly engineVersion: string;
  readonly recordedById: string;
  readonly recordedAt: Date;
};

export const insertInhomogeneityTest = (tx: Tx, { performedOn, ...fields }: NewTest) =>
  tx.inhomogeneityTest.create({
    data: { ...fields, performedOn: new Date(`${performedOn}T00:00:00Z`) },
    select: { id: true },
  });

const withDecisions = { decisions: { orderBy: { id: "asc" } } } as const;

export const loadInhomogeneityTest = (tx: Tx, id: string) =>
  isUuid(id) ? tx.inhomogeneityTest.findUnique({ where: { id }, include: withDecisions }) : null;

/** Newest first, of sensors and equipment alike, with the tag that stands on each. */
export const loadInhomogeneityTests = async (tx: Tx) => {
  const rows = await tx.inhomogeneityTest.findMany({
    orderBy: [{ performedOn: "desc" }, { recordedAt: "desc" }],
    include: withDecisions,
    take: 200,
  });
  const [sensors, equipment] = await Promise.all([
    tx.sensor.findMany({
      where: { id: { in: rows.flatMap(({ sensorId }) => sensorId ?? []) } },
      select: { id: true, tag: true },
    }),
    tx.equipment.findMany({
      where: { id: { in: rows.flatMap(({ equipmentId }) => equipmentId ?? []) } },
      select: { id: true, tag: true },
    }),
  ]);
  const tags = new Map([...sensors, ...equipment].map(({ id, tag }) => [id, tag]));
  return rows.map((row) => ({ ...row, tag: tags.get(row.sensorId ?? row.equipmentId ?? "") ?? "" }));
};

export const insertInhomogeneityDecision = (
  tx: Tx,
  fields: { testId: string; decision: string; reason: string; decidedById: string; decidedAt: Date },
) => tx.inhomogeneityDecision.create({ data: fields });

type AsOf = { readonly day: string; readonly moment: Date };

/** Of each sensor and each piece of equipment the newest test that was accepted by then. By the id of either. */
export const loadMeasuredInhomogeneity = async (
  tx: Tx,
  ids: readonly string[],
  { day, moment }: AsOf,
): Promise<ReadonlyMap<string, MeasuredInhomogeneity>> => {
  const rows = await tx.inhomogeneityTest.findMany({
    where: {
      OR: [{ sensorId: { in: [...ids] } }, { equipmentId: { in: [...ids] } }],
      performedOn: { lte: new Date(`${day}T00:00:00Z`) },
    },
    orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }],
    include: { decisions: { where: { decidedAt: { lte: moment } }, orderBy: { id: "asc" } } },
  });
  return new Map(
    rows
      .filter(({ decisions }) => decisionState(decisions) === "accepted")
      .map((row) => [
        (row.sensorId ?? row.equipmentId) as string,
        {
          performedOn: isoDay(row.performedOn),
          celsius: row.celsius,
          evaluation: JSON.parse(row.evaluation) as MeasuredInhomogeneity["evaluation"],
        },
      ]),
  );
};
