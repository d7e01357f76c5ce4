import type { Found, GateCheck } from "../finding";

const source = "ISO/IEC 17025:2017, 7.1.1";

const assess = ({
  sensors,
}: {
  readonly sensors: readonly {
    readonly tag: string;
    readonly orderNumber: string;
    readonly orderState: string;
  }[];
}): readonly Found[] =>
  sensors
    .filter(({ orderState }) => orderState !== "accepted")
    .map(({ tag, orderNumber, orderState }) => ({
      code: "order-not-accepted",
      outcome: "breach",
      subject: tag,
      reason: `its order ${orderNumber} is ${orderState}, not accepted.`,
      remedy: "Accept the order first.",
      source,
    }));

export const orderAccepted = {
  code: "order-not-accepted",
  heading: "metal",
  fine: "Every sensor's order is accepted.",
  source,
  assess,
} as const satisfies GateCheck;
