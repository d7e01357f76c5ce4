import { canonical } from "@/lib/domain/audit/canonical";
import type { Tx } from "../in-scope";
import type { Run } from "../run/load-run";
import { sha256 } from "../sha256";

/** What the gate was passed for: load, setpoints, furnace and instruments, in one number of 32 bytes. */
export const planDigest = (run: Run): Uint8Array<ArrayBuffer> =>
  sha256(
    new TextEncoder().encode(
      canonical({
        configuration: run.configurationId,
        voltmeter: run.voltmeterId,
        scanner: run.scannerId,
        setpoints: run.setpoints.map(({ position, celsius }) => [position, celsius]),
        places: run.places.map((place) => [
          place.place,
          place.kind,
          place.sensorId,
          place.equipmentId,
          place.channel,
          place.junctionId,
          place.junctionCelsius,
          place.immersionMillimetre,
        ]),
      }),
    ),
  );

const isSame = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);

/** When this run passed its gate with the load it has now; null while it has not. */
export const gatePassedAt = async (tx: Tx, run: Run): Promise<Date | null> => {
  const last = await tx.gateOutcome.findFirst({ where: { runId: run.id }, orderBy: { id: "desc" } });
  return last && last.verdict === "may-start" && isSame(last.planDigest, planDigest(run))
    ? last.assessedAt
    : null;
};
