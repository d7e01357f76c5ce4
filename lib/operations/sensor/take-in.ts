import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { holdDeviating } from "@/lib/data/hold/hold-deviating";
import type { Tx } from "@/lib/data/in-scope";
import { loadIntakePolicy } from "@/lib/data/intake/intake-policy-store";
import { insertSensors } from "@/lib/data/sensor/insert-sensors";
import { sensorsStillHere } from "@/lib/data/sensor/still-here";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { assessIntake } from "@/lib/domain/intake/assess-intake";
import { decidePastDay } from "@/lib/domain/order/past-day";
import { decideRuleSetIntake } from "@/lib/domain/order/rule-set";
import type { Order } from "@/lib/domain/order/types";
import { demand, Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { conditionWith, intakeFindings } from "@/lib/domain/sensor/intake-findings";
import { decideReceipt } from "@/lib/domain/sensor/rules";
import type { SensorAtIntake } from "@/lib/domain/sensor/schema";
import { stillHereAs } from "@/lib/domain/sensor/still-here";

type Arrival = {
  readonly order: Order;
  readonly position: number;
  /** YYYY-MM-DD */
  readonly receivedOn: string;
  readonly sensors: readonly SensorAtIntake[];
  readonly takenInById: string;
  readonly now: Date;
};

export type TakenIn = {
  readonly tags: readonly string[];
  /** Those that are not as described, or that a check found outside its limit: they are on hold. */
  readonly deviating: readonly string[];
  /** Those whose serial is in the house under another label too. */
  readonly twice: readonly string[];
  readonly events: readonly AuditEvent[];
};

const demandLine = (order: Order, position: number) => {
  const line = order.lines.find((each) => each.position === position);
  if (!line)
    throw new Refused({
      code: "invalid",
      message: "This order has no such line. Nothing was stored.",
      fields: { position: "Choose a line of this order." },
    });
  return line;
};

/** What a paste and a file have in common: the sensors of one order line, checked against the policy, all or none. */
export const takeIn = async (tx: Tx, arrival: Arrival): Promise<TakenIn> => {
  const { order, receivedOn, now } = arrival;
  const line = demandLine(order, arrival.position);
  const received = order.lines.flatMap(({ position, sensors }) =>
    sensors.map(({ serial, tag, isReplaced }) => ({ serial, tag, position, isReplaced })),
  );
  const { position, quantity } = line;
  demand(decideReceipt(order.state, { position, quantity, received }, arrival.sensors));
  demand(decideRuleSetIntake(order.ruleSet, arrival.sensors));
  demand(decidePastDay("receivedOn", receivedOn, now, "the sensors came"));
  const { policy } = await loadIntakePolicy(tx);
  const assessed = arrival.sensors.map((sensor) => {
    const findings = assessIntake(policy, line.typeLetter, sensor);
    return { ...sensor, ...conditionWith(sensor, findings), findings };
  });
  const known = await sensorsStillHere(tx, order);
  const stored = await insertSensors(
    tx,
    { customerId: order.customerId, line, receivedOn, takenInById: arrival.takenInById, takenInAt: now },
    assessed,
  );
  const events = stored.map(({ id, tag }, index) => {
    const { serial, condition, conditionNote, findings } = assessed[index]!;
    return eventOf(sensorEvents.received, id, {
      tag,
      orderNumber: order.number,
      serial,
      condition,
      findings: [...intakeFindings({ condition, conditionNote }, findings)],
    });
  });
  const by = { placedById: arrival.takenInById, placedAt: now };
  const whose = { orderId: order.id, orderNumber: order.number, customerId: order.customerId };
  const came = stored.map((one, index) => ({ ...one, ...assessed[index]! }));
  const held = await holdDeviating(tx, { ...whose, ...by }, came);
  await insertCustodyEvent(tx, {
    sensorIds: stored.map(({ id }) => id),
    kind: "received",
    fromWhom: "the customer",
    recordedById: arrival.takenInById,
    happenedAt: now,
  });
  return {
    tags: stored.map(({ tag }) => tag),
    deviating: came.filter(({ condition }) => condition === "deviates").map(({ tag }) => tag),
    twice: stored.flatMap(({ tag }, index) => {
      const { typeLetter } = line;
      return stillHereAs(known, { serial: assessed[index]!.serial, typeLetter }) ? [tag] : [];
    }),
    events: [...events, ...held],
  };
};
