import { z } from "zod";
import { orderStates } from "../../order/transitions";
import { sensorStates } from "../../sensor/transitions";

const instant = z.iso.datetime().describe("UTC, ISO 8601");

export const WireSensor = z.strictObject({
  tag: z.string().describe("The laboratory's own identity of the sensor."),
  serial: z.string(),
  state: z.enum(sensorStates),
  certificates: z.array(z.string()).describe("Numbers of its certificates."),
});

export const WireOrderLine = z.strictObject({
  position: z.int().positive(),
  typeLetter: z.string(),
  construction: z.string(),
  quantity: z.int().positive(),
  temperatureUnit: z.enum(["C", "F"]),
  setpoints: z.array(z.string()).describe("As typed, in the line's unit."),
  sensors: z.array(WireSensor),
});

export const WireOrderSummary = z.strictObject({
  number: z.string(),
  state: z.enum(orderStates),
  purchaseOrder: z.string(),
  recordedAt: instant,
  promisedOn: z.iso.date().nullable(),
  quantity: z.int().nonnegative(),
  certified: z.int().nonnegative().describe("How many of its sensors have a certificate."),
});

export const WireOrder = WireOrderSummary.extend({ lines: z.array(WireOrderLine) });

export const WireOrderPage = z.strictObject({
  orders: z.array(WireOrderSummary),
  next: z.string().nullable().describe("Give it as `after` for the next page; null = this was the last."),
});

export type WireOrder = z.output<typeof WireOrder>;
export type WireOrderPage = z.output<typeof WireOrderPage>;
