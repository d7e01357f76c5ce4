import type { Outcome } from "@/lib/metrology/outcome";
import { assessWindow } from "@/lib/metrology/stability/assess-window";
import { proposeWindow } from "@/lib/metrology/stability/propose-window";
import type { WindowAssessment, WindowProposal } from "@/lib/metrology/stability/stability-types";
import type { Window } from "./channel-window";
import type { AgreementInput } from "./reference-agreement";
import { type ReferenceTemperatures, referenceTemperatures } from "./reference-temperatures";
import type { Evidence } from "./schema";
import { stabilityCriterion } from "./stability-criterion";

export type ProposeInput = AgreementInput & Pick<Evidence, "setpoints">;

export type SetpointProposal = {
  readonly setpoint: string;
  readonly nominalCelsius: number;
  readonly proposal: WindowProposal;
};

/** A proposed window for each setpoint, or why there is none. Pass the series if they are at hand. */
export function proposeWindows(
  input: ProposeInput,
  series: readonly ReferenceTemperatures[] = referenceTemperatures(input),
): SetpointProposal[] {
  return input.setpoints.map(({ id, nominalCelsius }) => ({
    setpoint: id,
    nominalCelsius,
    proposal: proposeWindow(series, nominalCelsius, stabilityCriterion(input, nominalCelsius)),
  }));
}

/** The same numbers for a window that a person has moved. */
export function assessMovedWindow(
  input: AgreementInput,
  nominalCelsius: number,
  window: Window,
  series: readonly ReferenceTemperatures[] = referenceTemperatures(input, window),
): Outcome<WindowAssessment> {
  const criterion = stabilityCriterion(input, nominalCelsius);
  return assessWindow(series, window.fromSeconds, window.toSeconds, criterion);
}
