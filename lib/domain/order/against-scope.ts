import { roundUncertainty } from "@/lib/metrology/reporting/round-uncertainty";
import { typeset } from "@/lib/metrology/reporting/typeset";
import { pointScope, reportedCelsius } from "../evidence/point-scope";
import type { Evidence, TypeLetter } from "../evidence/schema";
import type { ExpectedUncertainty } from "./expected-uncertainty";
import { type TemperatureUnit, temperatureUnitLabels } from "./labels";

/** A setpoint against today's scope: what a certificate could claim there. */
export type SetpointScope = {
  /** `unusable`: a line covers it and states nothing there. */
  readonly state: "not-stated" | "inside" | "outside" | "unusable";
  /** "0.80 °C", in the line's unit; or "". */
  readonly capability: string;
};

type Asked = {
  readonly typeLetter: TypeLetter;
  readonly celsius: number;
  readonly temperatureUnit?: TemperatureUnit;
};

const capabilityText = (celsius: number | null, unit: TemperatureUnit): string => {
  const rounded = celsius === null ? null : roundUncertainty(unit === "F" ? celsius * 1.8 : celsius, 2);
  return rounded?.ok ? `${typeset(rounded.value.text)} ${temperatureUnitLabels[unit]}` : "";
};

export const setpointScope = (
  scope: Evidence["scope"],
  { typeLetter, celsius, temperatureUnit = "C" }: Asked,
): SetpointScope => {
  // Any U will do to ask where the point lies.
  const placed = pointScope(scope, typeLetter, celsius, 1);
  if (!placed.ok) return { state: "unusable", capability: "" };
  return {
    state: placed.value.state,
    capability: capabilityText(placed.value.capabilityCelsius, temperatureUnit),
  };
};

/** The U to expect as it would be reported: never below the capability, and u raised with it. */
export const expectedWithin = (
  scope: Evidence["scope"],
  { typeLetter, celsius }: Asked,
  expected: ExpectedUncertainty,
): ExpectedUncertainty => {
  if (expected.kind === "unknown") return expected;
  const placed = pointScope(scope, typeLetter, celsius, expected.expandedCelsius);
  if (!placed.ok)
    return { kind: "unknown", reason: `The scope states no capability there: ${placed.problem.message}.` };
  const reported = reportedCelsius(placed.value, expected.expandedCelsius);
  const raise = reported / expected.expandedCelsius;
  return {
    ...expected,
    expandedCelsius: reported,
    standardUncertaintyCelsius: expected.standardUncertaintyCelsius * raise,
  };
};
