import type { DecisionRule } from "../evidence/schema";

/** Every sentence of a certificate that is not a figure or a name. Our own wording; clauses are named, not quoted. */

export const title = "Calibration certificate";

/** `source`: where the reference functions of the points stand, from `referenceSource`. */
export const method = (source: string) => ({
  name: "Comparison in a tube furnace",
  description:
    "The thermocouple was compared with reference thermocouples in a tube furnace at the setpoints listed. " +
    "Readings within an accepted stability window were averaged over time; the emf was carried over to the nominal " +
    `temperature with the Seebeck coefficient of the reference function of ${source}. The measurement equation ` +
    "and the budget follow the worked example S5 of EA-4/02, extended by inhomogeneity and drift.",
});

export const scale = "Temperatures are on the International Temperature Scale of 1990 (ITS-90).";
export const referenceFunction = (source: string): string =>
  `Deviations are from the reference function of the type in ${source}; emf values hold for a reference junction at 0 °C.`;

/** 7.8.4.1 c. `uncalibrated` names instruments that stand on stated limits instead of a certificate of their own. */
export const traceabilityStatement = (uncalibrated: readonly string[]): string =>
  "The results are traceable to the International System of Units (SI) and to ITS-90 through the calibrations of the " +
  "standards and instruments listed; each calibration was in date on the days of the measurement and its uncertainty " +
  "is part of U." +
  (uncalibrated.length === 0
    ? ""
    : ` No calibration certificate is held for ${uncalibrated.join(", ")}: the effect is bounded by the limits in the budget.`);

/** Beside a result that lies outside the laboratory's accredited scope, on paper and on screen. */
export const outsideScopeSign = "†";
export const allInScope = "Every result lies within the laboratory's scope of accreditation.";
export const someOutsideScope = `${outsideScopeSign} Outside the laboratory's scope of accreditation: this result is not covered by it. The results without this sign lie within the scope.`;
export const allOutsideScope = `${outsideScopeSign} Outside the laboratory's scope of accreditation: no result of this certificate is covered by it.`;

export const adjustment =
  "None made: the thermocouple was neither adjusted, annealed nor repaired; the results hold for it as received.";
export const sampling = "Not applicable: the laboratory took no sample.";
export const externalResults = "None: every result was obtained by this laboratory.";

export const statements = [
  "The results relate only to the item described on this certificate, in the condition in which it was received.",
  "This certificate may be reproduced only in full, unless the laboratory agrees in writing.",
  "The laboratory recommends no recalibration interval on this certificate.",
] as const;

export const demonstration =
  "Demonstration: laboratory, customer, item and readings are invented. This is not a calibration certificate of a real laboratory.";

export const performerSignedOff =
  "Reviewed and signed off by the person who performed the measurement, under the laboratory's recorded policy; a second look by another person follows.";

/**
 * Specific risk of false acceptance at the acceptance limit for a normal distribution and k = 2, by guard band w = r·U:
 * ILAC-G8:09/2019, table of guard bands (0.83, 1, 1.5, 3). Between two lines the bound of the smaller ratio holds.
 */
const riskBounds = [
  { ratio: 3, bound: "about 1 in 1 000 000" },
  { ratio: 1.5, bound: "0.16 %" },
  { ratio: 1, bound: "2.5 %" },
  { ratio: 0.83, bound: "5 %" },
] as const;

const nonBinary =
  "Pass: the error lies within the acceptance limit. Conditional pass: within the tolerance but inside the guard band. " +
  "Conditional fail: outside the tolerance by no more than the guard band. Fail: further outside.";

const binary = "Pass: the error lies within the acceptance limit. Fail: it lies outside.";

/** 7.8.6.1: the rule and its risk, by ILAC-G8:09/2019 and JCGM 106:2012. Null where no statement was agreed. */
export const decisionRuleText = (rule: DecisionRule): { rule: string; risk: string } | null => {
  if (rule.kind === "none") return null;
  if (rule.kind === "target-risk") return targetRiskText(rule);
  if (rule.kind === "guarded-binary" && rule.guardBandRatio < 0)
    return {
      rule: `Acceptance limit = tolerance limit + ${-rule.guardBandRatio} × U (ILAC-G8:09/2019, JCGM 106:2012). ${binary}`,
      risk: "The guard band protects against false rejection; the probability of false acceptance may exceed 50 %.",
    };
  if (rule.kind === "simple")
    return {
      rule: `Simple acceptance (ILAC-G8:09/2019): the acceptance limit equals the tolerance limit, no guard band. Pass: the error lies within the tolerance. Fail: it lies outside.${
        rule.largestRatio === undefined
          ? ""
          : ` Nothing is decided where U exceeds ${rule.largestRatio} of the tolerance.`
      }`,
      risk: "For an error at the limit the probability of a false decision is up to 50 %, shared by customer and laboratory.",
    };
  const isBinary = rule.kind === "guarded-binary";
  const bound = riskBounds.find((line) => rule.guardBandRatio >= line.ratio)?.bound ?? "50 %";
  return {
    rule: `Guarded acceptance (ILAC-G8:09/2019, JCGM 106:2012): acceptance limit = tolerance limit − ${rule.guardBandRatio} × U. ${isBinary ? binary : nonBinary}`,
    risk: `For a pass the probability of false acceptance is at most ${bound} at each point (normal distribution, k = 2).${isBinary ? "" : " A conditional statement carries a probability of up to 50 %."}`,
  };
};

const targetRiskText = (rule: Extract<DecisionRule, { kind: "target-risk" }>) => ({
  rule: `Guarded acceptance (ILAC-G8:09/2019, JCGM 106:2012): the guard band is as wide as keeps the probability of false acceptance at the acceptance limit. ${rule.isBinary ? binary : nonBinary}`,
  risk: `For a pass the probability of false acceptance is at most ${Number((rule.falseAcceptance * 100).toPrecision(6))} % at each point (Student’s t with the effective degrees of freedom, both tolerance limits counted).`,
});
