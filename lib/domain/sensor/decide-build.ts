import { ok, type Result, refuse } from "../refusal";
import type { SensorBuild } from "./build";
import { buildLines } from "./build-draft";
import type { SensorState } from "./transitions";

/** While it waits or stands in a load that has not started; afterwards its record speaks of what was measured. */
const open: readonly SensorState[] = ["received", "loaded"];

/** What differs between the two, in words: "Lead insulation: PTFE or PFA, now Fibreglass". */
export const changedBuild = (before: SensorBuild, after: SensorBuild): readonly string[] => {
  const then = buildLines(before);
  return buildLines(after).flatMap(({ label, value }, at) =>
    value === then[at]?.value
      ? []
      : [`${label}: ${then[at]?.value || "not stated"}, now ${value || "not stated"}`],
  );
};

/** Whether a sensor's build may be stated anew, and what changes by it. */
export const decideBuild = (
  sensor: {
    readonly tag: string;
    readonly state: SensorState;
    /** The run it is loaded in has passed its gate, which looked at this. */
    readonly hasPassedGate: boolean;
  },
  before: SensorBuild,
  after: SensorBuild,
): Result<readonly [string, ...string[]]> => {
  if (!open.includes(sensor.state))
    return refuse(
      "wrong-state",
      `${sensor.tag} is ${sensor.state}: what it was made like stands with its results. Nothing was changed.`,
    );
  if (sensor.hasPassedGate)
    return refuse(
      "wrong-state",
      `${sensor.tag} stands in a run whose gate is passed: what the gate looked at stays. Nothing was changed.`,
    );
  const [first, ...others] = changedBuild(before, after);
  return first === undefined
    ? refuse("invalid", "Nothing differs from what is recorded. Nothing was changed.")
    : ok([first, ...others]);
};
