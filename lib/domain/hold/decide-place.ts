import type { OrderState } from "../order/transitions";
import { ok, type Result, refuse } from "../refusal";
import { isDone, type SensorState } from "../sensor/transitions";

type Sensor = { readonly id: string; readonly tag: string; readonly state: SensorState };

/** What is put on hold: one sensor that is still at work, or (no tag) the whole order. */
export const decidePlace = (
  orderState: OrderState,
  sensors: readonly Sensor[],
  asked: { readonly tag: string; readonly kind: "condition" | "question"; readonly asks: boolean },
): Result<Sensor | null> => {
  if (orderState === "completed" || orderState === "cancelled")
    return refuse("wrong-state", `The order is ${orderState}: nothing of it can wait. Nothing was stored.`);
  if (asked.kind === "question" && !asked.asks)
    return refuse("invalid", "It would wait for an answer to no question. Nothing was stored.", {
      "question.text": "Write what you ask the customer.",
    });
  if (asked.tag === "") return ok(null);
  const sensor = sensors.find(({ tag }) => tag === asked.tag);
  if (!sensor) return refuse("not-found", "This sensor is not of this order. Nothing was stored.");
  if (isDone(sensor.state))
    return refuse(
      "wrong-state",
      `${sensor.tag} has its certificate or was handed back. Report nonconforming work instead.`,
    );
  return ok(sensor);
};
