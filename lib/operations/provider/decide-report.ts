import { holdsOf } from "@/lib/data/hold/holds-of";
import type { Tx } from "@/lib/data/in-scope";
import { completeFinishedOrder } from "@/lib/data/order/complete-finished-order";
import { insertReportDecision, loadReports } from "@/lib/data/provider/report-store";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { lockSensors } from "@/lib/data/sql/lock-sensors";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { decideNotHeld } from "@/lib/domain/hold/decide-not-held";
import { decideReportDecision } from "@/lib/domain/provider/decide-report";
import { providerEvents } from "@/lib/domain/provider/events";
import { DecideReportInput } from "@/lib/domain/provider/report-schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const demandReport = async (tx: Tx, id: string) => {
  const row = await tx.providerReport.findUnique({ where: { id }, select: { sensorId: true } });
  if (!row) throw new Refused({ code: "not-found", message: "This record is not here." });
  const [locked] = await lockSensors(tx, [row.sensorId]);
  const report = (await loadReports(tx, [row.sensorId])).find((one) => one.id === id);
  const sensor = await tx.sensor.findUniqueOrThrow({
    where: { id: row.sensorId },
    include: { line: { include: { order: { select: { number: true } } } } },
  });
  if (!report || !locked) throw new Refused({ code: "not-found", message: "This record is not here." });
  return { report, sensor, state: locked.state };
};

/** The first that counts finishes the sensor; a correction changes only what is said of it. */
const finish = async (tx: Tx, sensorId: string, orderNumber: string): Promise<readonly AuditEvent[]> => {
  demand(decideNotHeld(await holdsOf(tx, [sensorId]), "signed off"));
  await setSensorState(tx, [sensorId], ["received"], "issued");
  return completeFinishedOrder(tx, orderNumber);
};

/** A second person holds the record against the provider's certificate: from then on it counts, and the customer sees it. */
export const decideReport = defineOperation({
  name: "provider/decide-report",
  permission: "provider-report.decide",
  input: DecideReportInput,
  perform: async ({ actor, now, tx }, { id, decision, reason }) => {
    const { report, sensor, state } = await demandReport(tx, id);
    const personId = personIdOf(actor);
    const decided = demand(
      decideReportDecision({
        ...{ sensor: sensor.tag, personId, decision, reason },
        recordedById: report.recordedById,
        standing: report.standing,
        isStillTheirs: sensor.line.providerId === report.providerId,
      }),
    );
    await insertReportDecision(tx, report, {
      ...{ decision: decided, reason },
      decidedById: personId,
      decidedAt: now,
    });
    const orderNumber = sensor.line.order.number;
    const isFirst = decided === "accepted" && state === "received";
    const completed = isFirst ? await finish(tx, sensor.id, orderNumber) : [];
    const { providerName: provider, certificate, correction } = report;
    const facts = { sensor: sensor.tag, provider, certificate };
    const event =
      decided === "accepted"
        ? eventOf(providerEvents.reportAccepted, sensor.id, { ...facts, orderNumber, correction })
        : eventOf(providerEvents.reportRejected, sensor.id, { ...facts, reason });
    return { value: { tag: sensor.tag, decision: decided }, events: [event, ...completed] };
  },
});
