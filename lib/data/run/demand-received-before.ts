import { isoDay } from "@/lib/domain/calibration/due";
import { demand } from "@/lib/domain/refusal";
import { decideReceivedBefore } from "@/lib/domain/run/decide-received-before";
import type { Tx } from "../in-scope";
import type { Run } from "./load-run";

/** Each sensor of the load had come when the run began. */
export const demandReceivedBefore = async (tx: Tx, run: Run, startedAt: Date): Promise<void> => {
  const intakes = await tx.intake.findMany({
    where: { sensorId: { in: run.places.flatMap(({ sensorId }) => sensorId ?? []) } },
    select: { receivedOn: true, sensor: { select: { tag: true } } },
    orderBy: { sensor: { tag: "asc" } },
  });
  const received = intakes.map(({ receivedOn, sensor }) => ({
    tag: sensor.tag,
    receivedOn: isoDay(receivedOn),
  }));
  demand(decideReceivedBefore(startedAt, received));
};
