import type { Found, GateCheck } from "../finding";
import { commonPractice } from "../finding";
import { celsius } from "../words";

type Facts = {
  readonly setpointsCelsius: readonly number[];
  readonly sensors: readonly {
    readonly tag: string;
    readonly orderedCelsius: readonly number[];
    readonly maximumCelsius: number | null;
  }[];
};

/** A sensor ordered to 600 °C does not go to 1100 °C with its mates: what it has seen cannot be taken back. */
const assess = ({ sensors, setpointsCelsius }: Facts): readonly Found[] => {
  const highest = Math.max(...setpointsCelsius);
  return sensors.flatMap(({ tag, orderedCelsius, maximumCelsius }) => {
    const most = maximumCelsius ?? orderedCelsius.at(-1);
    return most === undefined || highest <= most
      ? []
      : [
          {
            code: "exposure",
            outcome: "breach",
            subject: tag,
            reason: `ordered up to ${celsius(most)}; it must not go to ${celsius(highest)} with the others.`,
            remedy:
              "Take it out of this load, leave the higher setpoints to another run, or agree on a higher maximum in the order.",
            source: commonPractice,
          } as const,
        ];
  });
};

export const exposure = {
  code: "exposure",
  heading: "setpoints",
  fine: "No sensor goes above the temperature it was ordered to.",
  source: commonPractice,
  assess,
} as const satisfies GateCheck;
