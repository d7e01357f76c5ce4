import type { Tx } from "@/lib/data/in-scope";
import { isoDay } from "@/lib/domain/calibration/due";
import { isApprovedOn } from "@/lib/domain/order/subcontracting";
import { lockSensors } from "../sql/lock-sensors";
import { loadProvider } from "./provider-store";
import { loadReports } from "./report-store";

/** A sensor, locked, with whom its line goes to, what was recorded of it, and whether it was ever sent away. */
export const loadReportFacts = async (tx: Tx, tag: string, issuedOn: string) => {
  const sensor = await tx.sensor.findUnique({
    where: { tag },
    include: {
      intake: { select: { receivedOn: true } },
      line: { include: { setpoints: true, order: { select: { number: true } } } },
    },
  });
  if (!sensor) return null;
  const [locked] = await lockSensors(tx, [sensor.id]);
  const { providerId } = sensor.line;
  const provider = providerId ? await loadProvider(tx, providerId) : null;
  const sent = await tx.custodyEvent.findFirst({
    where: { sensorId: sensor.id, kind: "to-provider" },
    select: { id: true },
  });
  const reports = await loadReports(tx, [sensor.id]);
  return {
    sensor,
    provider,
    state: locked?.state ?? sensor.state,
    isApproved: provider !== null && isApprovedOn(provider, issuedOn),
    wasSent: sent !== null,
    takenInOn: sensor.intake ? isoDay(sensor.intake.receivedOn) : null,
    earlier: reports.map(({ standing }) => standing),
    orderedCelsius: sensor.line.setpoints.map(({ celsius }) => celsius),
  };
};
