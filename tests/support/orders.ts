import type { z } from "zod";
import type { RecordOrderInput } from "@/lib/domain/order/schema";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { acceptOrder } from "@/lib/operations/order/accept";
import { recordOrder } from "@/lib/operations/order/record";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { clock, type FrontDesk } from "./front-desk";

export type OrderInput = z.input<typeof RecordOrderInput>;

export const lineInput = {
  typeLetter: "K",
  construction: "Metal-sheathed, 3 mm, 500 mm long, bare tails",
  protection: "metal-sheath",
  quantity: "3",
  temperatureUnit: "C",
  setpoints: "300 500 700 900 1000",
  tolerance: "1",
} as const satisfies OrderInput["lines"][number];

export const orderInput = (customerId: string, more: Partial<OrderInput> = {}): OrderInput => ({
  customerId,
  purchaseOrder: "PO 4711",
  decisionRule: "guarded",
  guardBandRatio: "1",
  decisionRuleAgreedBy: "Nora North",
  decisionRuleAgreedOn: "2026-03-02",
  lines: [lineInput],
  ...more,
});

export const answers = {
  version: 1,
  requirementsUnderstood: "on",
  capabilityAndResources: "on",
  externalProviders: "none",
  methodSuitable: "on",
} as const;

export const intakeInput = (orderNumber: string, serials: string) => ({
  orderNumber,
  position: 1,
  receivedOn: "2026-03-03",
  serials,
  condition: "as-described" as const,
  polarity: "ok" as const,
  typeCheck: "ok" as const,
});

export const recorded = async (desk: FrontDesk, input: OrderInput, actor: Actor = desk.frontDesk) =>
  (await execute(recordOrder, actor, input, clock)).number;

export const accepted = async (
  desk: FrontDesk,
  input: OrderInput,
  more: { readonly externalProviders?: "approved" } = {},
) => {
  const number = await recorded(desk, input);
  await execute(acceptOrder, desk.frontDesk, { ...answers, ...more, number, toldCustomer: "on" }, clock);
  return number;
};

export const received = async (desk: FrontDesk, orderNumber: string, serials: string, position = 1) =>
  (await execute(receiveSensors, desk.frontDesk, { ...intakeInput(orderNumber, serials), position }, clock))
    .tags;
