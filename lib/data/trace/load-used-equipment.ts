import { isoDay } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import { thermometerOf } from "@/lib/domain/gate/thermometer-of";
import type { Tx } from "../in-scope";

/** The thermometer that each junction was checked with on the day: tag of the junction → tag of the thermometer. */
export const loadThermometers = async (
  tx: Tx,
  runId: string,
  until: Date,
): Promise<ReadonlyMap<string, string>> => {
  const checks = await tx.benchCheck.findMany({
    where: { runId, kind: "junction-thermometer", checkedAt: { lte: until } },
    orderBy: { id: "asc" },
  });
  return new Map(
    checks.flatMap(({ channel, figures }) => {
      const thermometer = thermometerOf(figures);
      return thermometer ? [[channel, thermometer] as const] : [];
    }),
  );
};

export const loadUsedEquipment = (tx: Tx, ids: readonly string[], tags: readonly string[]) =>
  tx.equipment.findMany({
    where: { OR: [{ id: { in: [...ids] } }, { tag: { in: [...tags] } }] },
    include: {
      calibrations: {
        orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }],
        select: {
          id: true,
          certificate: true,
          performedOn: true,
          recordedAt: true,
          decisions: { orderBy: { id: "asc" }, select: { decision: true, decidedAt: true } },
        },
      },
    },
  });

export type UsedEquipment = Awaited<ReturnType<typeof loadUsedEquipment>>[number];

/**
 * The record that a certificate's line means: of those with that number the one accepted when it was signed, else the
 * last. A number may be there twice: one that was refused and written down again.
 */
export const namedCalibration = (
  equipment: UsedEquipment | undefined,
  certificate: string,
  signedAt: Date,
): string | null => {
  const named = (equipment?.calibrations ?? [])
    .filter((one) => one.certificate === certificate && one.recordedAt <= signedAt)
    .sort((a, b) => a.recordedAt.getTime() - b.recordedAt.getTime());
  return (named.filter((one) => isAccepted(one, signedAt)).at(-1) ?? named.at(-1))?.id ?? null;
};

type Decided = Pick<UsedEquipment["calibrations"][number], "decisions">;

const isAccepted = ({ decisions }: Decided, moment: Date): boolean =>
  decisions.filter(({ decidedAt }) => decidedAt <= moment).at(-1)?.decision === "accepted";

/** In force on the day, as it was known when the certificate was signed: what is decided later changes nothing. */
export const acceptedInForce = (equipment: UsedEquipment, day: string, signedAt: Date): string | null => {
  const known = equipment.calibrations.filter(
    (one) => one.recordedAt <= signedAt && isAccepted(one, signedAt),
  );
  const found = calibrationInForce(
    known.map(({ id, performedOn }) => ({ id, performedOn: isoDay(performedOn) })),
    day,
  );
  return found?.id ?? null;
};
