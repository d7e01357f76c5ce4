import { toleranceAt, toleranceWords } from "../../evidence/tolerance-at";
import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import { list } from "../words";

/** Where a class ends nothing is extrapolated: the certificate will say that no tolerance is defined there. */
const assess = ({ sensors, setpointsCelsius }: GatePlan): readonly Found[] =>
  sensors.flatMap(({ tag, type, tolerance }) => {
    if (tolerance === null) return [];
    const beyond = setpointsCelsius.filter((at) => toleranceAt(tolerance, type, at).kind === "not-defined");
    const words = toleranceWords(tolerance);
    return beyond.length === 0
      ? []
      : [
          {
            code: "class-range",
            outcome: "warning",
            subject: tag,
            reason: `${words.standard}, class ${words.class} defines no tolerance for type ${type} at ${list(beyond)}.`,
            remedy: "No conformity will be stated there; agree on another class if one is wanted.",
            source: words.standard,
          } as const,
        ];
  });

export const classRange = {
  code: "class-range",
  heading: "range",
  fine: "Every tolerance that was asked for is defined at every setpoint.",
  source: "the standard named in the order",
  assess,
} as const satisfies GateCheck;
