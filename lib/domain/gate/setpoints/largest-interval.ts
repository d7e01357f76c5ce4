import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { celsius } from "../words";

/** The widest step between neighbours, and where; null with a single setpoint. */
const widestStep = (setpoints: readonly number[]) => {
  const sorted = setpoints.toSorted((a, b) => a - b);
  let widest: { readonly from: number; readonly to: number } | null = null;
  for (const [index, to] of sorted.entries()) {
    const from = sorted[index - 1];
    if (from !== undefined && (widest === null || to - from > widest.to - widest.from)) widest = { from, to };
  }
  return widest;
};

// 600 and 850 °F are a last bit further apart in °C than 250 °F: no setpoint is meant more finely than half a millikelvin.
const SLACK_CELSIUS = 0.0005;

const assess = ({ sensors, setpointsCelsius }: GatePlan, policy: GatePolicy): readonly Found[] => {
  const step = widestStep(setpointsCelsius);
  if (step === null) return [];
  const width = step.to - step.from;
  const between = `${celsius(width)} lie between ${celsius(step.from)} and ${celsius(step.to)}`;
  return sensors.flatMap(({ tag, largestIntervalCelsius, intervalRule }): readonly Found[] => {
    const usual = policy.interpolationIntervalCelsius;
    if (largestIntervalCelsius === null)
      return width > usual.value
        ? [
            {
              code: "largest-interval-not-stated",
              outcome: "warning",
              subject: tag,
              reason: `no largest interval is agreed, and ${between}: wide for interpolation.`,
              remedy: `Results at the setpoints stand; between them at most ${celsius(usual.value)} apart is usual.`,
              source: usual.source,
            },
          ]
        : [];
    return width > largestIntervalCelsius + SLACK_CELSIUS
      ? [
          {
            code: "largest-interval",
            outcome: "breach",
            subject: tag,
            reason: `at most ${celsius(largestIntervalCelsius)} apart was agreed; ${between}.`,
            remedy: "Order setpoints between, or say what was agreed instead.",
            source: intervalRule === "" ? "the interval agreed in the order" : intervalRule,
          },
        ]
      : [];
  });
};

export const largestInterval = {
  code: "largest-interval",
  heading: "setpoints",
  fine: "No two setpoints lie further apart than was agreed.",
  source: "the rule set named in the order",
  assess,
} as const satisfies GateCheck;
