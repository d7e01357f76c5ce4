import type { Found, GateCheck } from "../finding";

const source = "ISO/IEC 17025:2017, 7.8.2.1 p";

const assess = ({
  sensors,
}: {
  readonly sensors: readonly {
    readonly tag: string;
    readonly orderNumber: string;
    readonly providerName: string | null;
  }[];
}): readonly Found[] =>
  sensors.flatMap(({ tag, orderNumber, providerName }) =>
    providerName === null
      ? []
      : [
          {
            code: "subcontracted",
            outcome: "breach",
            subject: tag,
            reason: `its line of order ${orderNumber} is subcontracted to ${providerName}, so it is not measured here.`,
            remedy: `Send it to ${providerName} and record their certificate on its page, or change the order to have the line done here.`,
            source,
          },
        ],
  );

/** What we measured must not be called a provider's result, nor theirs ours. */
export const doneHere = {
  code: "subcontracted",
  heading: "metal",
  fine: "Every sensor's line is done here, none by an external provider.",
  source,
  assess,
} as const satisfies GateCheck;
