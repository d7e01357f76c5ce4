import type { EvidenceFinding } from "../evaluation";
import { assessMovedWindow } from "../propose-windows";
import type { FindingInput } from "./finding-input";

/** Windows that fail the criterion, and references that differ by more than U of their difference. */
export function findUnstableWindows({ evidence, setpoints }: FindingInput): EvidenceFinding[] {
  return setpoints.flatMap(({ setpoint, window, windowPath }) => {
    const assessed = assessMovedWindow(evidence, setpoint.nominalCelsius, window);
    const at = `Setpoint ${setpoint.id}: `;
    if (!assessed.ok) {
      return [{ code: "window-not-judged", path: windowPath, message: `${at}${assessed.problem.message}.` }];
    }
    const { differenceCelsius, criterion, reasons } = assessed.value;
    const isApart = differenceCelsius !== null && differenceCelsius > criterion.agreementCelsius;
    return reasons.map((reason) => {
      // assessWindow gives the references' difference last.
      const code = isApart && reason === reasons.at(-1) ? "references-disagree" : "window-not-stable";
      return { code, path: windowPath, message: `${at}${reason}` };
    });
  });
}
