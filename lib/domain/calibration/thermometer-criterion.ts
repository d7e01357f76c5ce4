import { sprtAcceptance } from "@/lib/metrology/platinum/sprt-acceptance";
import type { AcceptanceCheck } from "./acceptance-check";
import type { FindingsOf } from "./findings";

type Found = Pick<AcceptanceCheck, "answer" | "finding">;

/** dR/dt over R at 0 °C, per °C: IEC 60751:2022, A of its function; near enough for any platinum thermometer. */
const RELATIVE_SLOPE = 3.9083e-3;

const icePoint = ({ curve }: FindingsOf<"thermometer">): number =>
  curve.form === "sprt" ? curve.waterOhm : curve.zeroOhm;

/**
 * Whether a thermometer's certificate agrees with what we take for granted: platinum fit for the ITS-90 (its section 3.3),
 * and a resistance at the ice or triple point that has not moved further than its record allows.
 */
export const thermometerCriterion = (
  later: FindingsOf<"thermometer">,
  earlier: { readonly certificate: string; readonly findings: FindingsOf<"thermometer"> } | null,
  driftHalfWidthCelsius: number,
): Found => {
  if (later.curve.form === "sprt") {
    const accepted = sprtAcceptance(later.curve.ratios, later.curve.section === "3.3.2");
    if (accepted.kind === "refused")
      return { answer: "no", finding: `Its platinum is not fit for the ITS-90: ${accepted.reason}.` };
  }
  if (!earlier || earlier.findings.curve.form !== later.curve.form)
    return {
      answer: "not-known",
      finding: "There is no accepted certificate of the same form before this one to compare it with.",
    };
  const before = icePoint(earlier.findings);
  const change = Math.abs((icePoint(later) - before) / before / RELATIVE_SLOPE);
  return {
    answer: change <= driftHalfWidthCelsius ? "yes" : "no",
    finding: `Since certificate ${earlier.certificate} its resistance at 0 °C has changed by ${Number(change.toPrecision(2))} °C; its record allows ± ${driftHalfWidthCelsius} °C.`,
  };
};
