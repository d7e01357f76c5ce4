import { temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import { list, span } from "../words";

type Facts = {
  readonly setpointsCelsius: readonly number[];
  readonly sensors: readonly Pick<GatePlan["sensors"][number], "tag" | "type">[];
};

const assess = ({ sensors, setpointsCelsius }: Facts): readonly Found[] =>
  sensors.flatMap(({ tag, type }) => {
    const reference = referenceFunctions[type];
    const range = temperatureRange(reference);
    const beyond = setpointsCelsius.filter((at) => at < range.fromCelsius || at > range.toCelsius);
    return beyond.length === 0
      ? []
      : [
          {
            code: "type-range",
            outcome: "breach",
            subject: tag,
            reason: `type ${type} is defined from ${span(range)}, not at ${list(beyond)}.`,
            remedy: "Take the sensor out of this load, or leave these setpoints to another run.",
            source: reference.source,
          } as const,
        ];
  });

export const typeRange = {
  code: "type-range",
  heading: "range",
  fine: "Every type is defined at every setpoint.",
  source: "the reference function of each type, as published",
  assess,
} as const satisfies GateCheck;
