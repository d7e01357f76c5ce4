import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import { list, span } from "../words";

type Facts = {
  readonly setpointsCelsius: readonly number[];
  readonly configuration: Pick<GatePlan["configuration"], "minimumCelsius" | "maximumCelsius">;
};

const source = "the furnace's record";

const assess = ({ configuration, setpointsCelsius }: Facts): readonly Found[] => {
  const range = { fromCelsius: configuration.minimumCelsius, toCelsius: configuration.maximumCelsius };
  const beyond = setpointsCelsius.filter((at) => at < range.fromCelsius || at > range.toCelsius);
  return beyond.length === 0
    ? []
    : [
        {
          code: "furnace-range",
          outcome: "breach",
          subject: "",
          reason: `The furnace works from ${span(range)}, not at ${list(beyond)}.`,
          remedy: "Choose another configuration or other setpoints.",
          source,
        },
      ];
};

export const furnaceRange = {
  code: "furnace-range",
  heading: "range",
  fine: "The furnace reaches every setpoint.",
  source,
  assess,
} as const satisfies GateCheck;
