import type { Found, GateCheck } from "../finding";
import { laboratoryPolicy } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";

const assess = (
  { bench, places }: Pick<GatePlan, "bench" | "places">,
  policy: GatePolicy,
): readonly Found[] => {
  const { value, source } = policy.junctionCelsius;
  return [...new Set(places.map(({ junction }) => junction))].flatMap((junction): readonly Found[] => {
    const seen = bench.junctions.find((one) => one.junction === junction);
    // To a tenth of a millikelvin: no thermometer here reads finer, and 0.03 is 0.03.
    const off = seen ? Math.round((seen.thermometerCelsius - seen.statedCelsius) * 10_000) / 10_000 : null;
    if (off !== null && Math.abs(off) <= value) return [];
    return [
      {
        code: "junction-by-thermometer",
        outcome: "breach",
        subject: junction,
        reason:
          off === null
            ? "this junction was not checked by thermometer today."
            : `the thermometer reads ${off} °C beside what is stated for this junction; at most ${value} °C either way.`,
        remedy:
          off === null
            ? "Put a thermometer beside it and record what it reads."
            : "Pack the ice anew or let the block settle, then check again.",
        source,
      },
    ];
  });
};

export const junctionByThermometer = {
  code: "junction-by-thermometer",
  heading: "same-day",
  fine: "Every reference junction is where it is said to be, by thermometer.",
  source: laboratoryPolicy,
  assess,
} as const satisfies GateCheck;
