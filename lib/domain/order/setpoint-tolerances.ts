import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { fahrenheitText } from "@/lib/metrology/reporting/fahrenheit";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { TypeLetter } from "../evidence/schema";
import { toleranceAt } from "../evidence/tolerance-at";
import { type AskedTolerance, askedTolerance } from "./asked-tolerance";
import { type TemperatureUnit, temperatureUnitLabels } from "./labels";
import type { Setpoint } from "./setpoint";

export type SetpointTolerance = {
  /** "600 °F". */
  readonly setpoint: string;
  /** The same in °C, where it was ordered in °F: "315.556 °C"; otherwise null. */
  readonly celsius: string | null;
  /** "± 4.00 °C"; "no tolerance defined"; "" without a class. */
  readonly tolerance: string;
  readonly state: "defined" | "not-defined" | "no-class";
  /** Why none is defined there; or what the standard says of it, e.g. "holds only where ordered ...". */
  readonly reason: string;
};

type Line = AskedTolerance & {
  readonly typeLetter: TypeLetter;
  readonly setpoints: readonly Setpoint[];
};

/** A tolerance (a difference) in the customer's unit, to the hundredth, converted exactly: "2.70". */
export const toleranceText = (celsius: number, unit: TemperatureUnit): string => {
  if (unit === "C") return roundHalfEven(celsius, 2);
  const text = fahrenheitText(celsius, 2, "difference");
  return text.ok ? text.value : `${celsius}`;
};

/** What a line's class or own limit says at each of its setpoints, in the customer's unit (a difference of 1 °C is 1.8 °F). */
export const setpointTolerances = (line: Line): readonly SetpointTolerance[] =>
  line.setpoints.map((setpoint) => {
    const unit = temperatureUnitLabels[line.temperatureUnit];
    const base = {
      setpoint: `${typeset(setpoint.typed.replace(/^\+/, ""))} ${unit}`,
      celsius: line.temperatureUnit === "F" ? `${typeset(roundHalfEven(setpoint.celsius, 3))} °C` : null,
    };
    const asked = askedTolerance(line);
    if (asked === null) return { ...base, tolerance: "", state: "no-class", reason: "" };
    const found = toleranceAt(asked, line.typeLetter, setpoint.celsius);
    if (found.kind === "not-defined")
      return { ...base, tolerance: "no tolerance defined", state: "not-defined", reason: found.reason };
    const size = toleranceText(found.celsius, line.temperatureUnit);
    return { ...base, tolerance: `± ${size} ${unit}`, state: "defined", reason: found.note ?? "" };
  });
