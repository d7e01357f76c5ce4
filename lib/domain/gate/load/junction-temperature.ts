import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "a junction has one temperature in a run";

const assess = ({ places }: Pick<GatePlan, "places">): readonly Found[] =>
  places.flatMap(({ junction, junctionCelsius, place }, at) => {
    const other = places
      .slice(0, at)
      .find((one) => one.junction === junction && one.junctionCelsius !== junctionCelsius);
    return other
      ? [
          {
            code: "junction-temperature",
            outcome: "breach",
            subject: place,
            at,
            reason: `This junction stands at another temperature in place ${other.place}.`,
            remedy: "A junction has one temperature in a run; choose another junction for this place.",
            source,
          } as const,
        ]
      : [];
  });

export const junctionTemperature = {
  code: "junction-temperature",
  heading: "load",
  fine: "Every reference junction has one temperature.",
  source,
  assess,
} as const satisfies GateCheck;
