import type { StandingHold } from "../hold/decide-not-held";
import type { OrderState } from "../order/transitions";
import { ok, type Result, refuse } from "../refusal";
import { decideCollection } from "../sensor/rules";
import type { SensorState } from "../sensor/transitions";

export type ShippedSensor = { readonly id: string; readonly tag: string; readonly state: SensorState };

export type Leaving = ShippedSensor & { readonly from: SensorState; readonly withoutCertificate: boolean };

/**
 * Which of an order's sensors leave in one parcel: with their certificates, or without one and with a reason, as at the
 * desk. What is on hold stays, unless it was decided that it goes back unmeasured; a cancelled order keeps nothing.
 */
export const decideShipment = (
  sensors: readonly ShippedSensor[],
  tags: readonly string[],
  holds: readonly StandingHold[],
  reason: string,
  orderState: OrderState = "accepted",
): Result<readonly Leaving[]> => {
  const wanted = [...new Set(tags)];
  const unknown = wanted.filter((tag) => !sensors.some((sensor) => sensor.tag === tag));
  if (unknown.length > 0)
    return refuse("not-found", `${unknown.join(", ")}: not of this order. Nothing was changed.`);
  const held = holds.filter(
    ({ tag, isToBeReturned }) => orderState !== "cancelled" && wanted.includes(tag) && !isToBeReturned,
  );
  if (held.length > 0)
    return refuse(
      "rule",
      `${[...new Set(held.map(({ tag, reason: why }) => `${tag} is on hold: ${why}`))].join("; ")}. Release the hold, or leave it out. Nothing was changed.`,
    );
  const leaving: Leaving[] = [];
  for (const sensor of sensors.filter(({ tag }) => wanted.includes(tag))) {
    const decided = decideCollection(sensor.state, reason);
    if (!decided.ok) {
      const { code, message, fields } = decided.refusal;
      return refuse(code, `${sensor.tag}: ${message}`, fields);
    }
    leaving.push({ ...sensor, ...decided.value });
  }
  return ok(leaving);
};
