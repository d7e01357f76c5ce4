import type { PriceLine } from "../price/compose-price";

/** An order as far as it can be charged: its price, and which of its sensors have their certificates. */
export type ChargeableOrder = {
  readonly id: string;
  readonly number: string;
  readonly price: readonly PriceLine[];
  readonly lines: readonly {
    readonly position: number;
    readonly quantity: number;
    readonly typeLetter: string;
    /** Those that are finished, with certificate. */
    readonly finished: readonly { readonly id: string; readonly tag: string; readonly serial: string }[];
  }[];
  /** What was handed over before, as `chargeKey`. */
  readonly handedOver: ReadonlySet<string>;
};

export type Charge = {
  readonly orderId: string;
  readonly sensorId: string | null;
  readonly key: string;
  readonly title: string;
  readonly position: number | null;
  readonly tag: string;
  readonly serial: string;
  readonly quantity: number;
  readonly unitAmount: number;
  readonly amount: number;
};

export const chargeKey = (sensorId: string | null, key: string): string => `${sensorId ?? "order"} ${key}`;

const noSensor = { sensorId: null, tag: "", serial: "" } as const;

/** Each finished sensor with what is counted by sensors and points; at nought where the price is by line or order alone. */
const sensorCharges = (order: ChargeableOrder): readonly Charge[] =>
  order.lines.flatMap(({ position, quantity: ordered, finished }) => {
    const counted = order.price.filter(
      (price) => price.position === position && (price.per === "point" || price.per === "sensor"),
    );
    const each = counted.map((price) => ({
      ...{ key: `${price.key}:${price.per}`, title: price.title, unitAmount: price.unitAmount },
      quantity: price.quantity / ordered,
    }));
    const all = each.length > 0 ? each : [{ key: "included", title: "Included", quantity: 1, unitAmount: 0 }];
    return finished.flatMap(({ id, tag, serial }) =>
      all.map((one) => ({
        ...{ orderId: order.id, sensorId: id, position, tag, serial },
        ...one,
        amount: one.quantity * one.unitAmount,
      })),
    );
  });

/** Lines and the order itself, as soon as the first of their sensors is finished. */
const onceCharges = (order: ChargeableOrder): readonly Charge[] => {
  const begun = new Set(
    order.lines.filter(({ finished }) => finished.length > 0).map(({ position }) => position),
  );
  if (begun.size === 0) return [];
  const seen = new Map<string, number>();
  return order.price.flatMap(({ key, per, title, position, unitAmount, amount, quantity }) => {
    if (per === "point" || per === "sensor") return [];
    if (position !== null && !begun.has(position)) return [];
    const base = position === null ? `${key}:order` : `${key}:line:${position}`;
    const count = (seen.get(base) ?? 0) + 1;
    seen.set(base, count);
    const named = count === 1 ? base : `${base}:${count}`;
    return [{ orderId: order.id, ...noSensor, key: named, title, position, quantity, unitAmount, amount }];
  });
};

/** What of an order can be charged now and was not handed over before: each thing once. */
export const chargesOf = (order: ChargeableOrder): readonly Charge[] =>
  [...sensorCharges(order), ...onceCharges(order)].filter(
    ({ sensorId, key }) => !order.handedOver.has(chargeKey(sensorId, key)),
  );
