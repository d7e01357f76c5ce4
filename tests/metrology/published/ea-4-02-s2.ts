import { sum } from "@/lib/metrology/number/sum";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import { eaS2 } from "../vectors/ea-4-02-s2";
import { checks } from "./check";
import { unwrap } from "./unwrap";

const rectangular = (halfWidth: number) => standardUncertainty({ kind: "rectangular", halfWidth });
const mS = standardUncertainty({ kind: "expanded", expanded: 0.045, coverageFactor: 2 });
const drift = rectangular(0.015);
const eccentricity = rectangular(0.01);
const buoyancy = rectangular(0.01);
const value = sum([10_000.005, 0.02]);
// u of the observed difference as the budget prints it: its pooled deviation is not in the page.
const result = unwrap(
  combineCorrelated(
    [mS, drift, 0.0142, eccentricity, buoyancy].map((effect) => ({ effect, degreesOfFreedom: null })),
    [],
  ),
);
const percent = (place: number) => 100 * (result.shares[place] as number);

export const eaS2Checks = checks(eaS2, {
  mS: () => mS,
  drift: () => drift,
  eccentricity: () => eccentricity,
  buoyancy: () => buoyancy,
  value: () => value,
  combined: () => result.standardUncertainty,
  expanded: () => Number(unwrap(reportValue(value, 2 * result.standardUncertainty, 2)).expanded),
  shareStandard: () => percent(0),
  shareDrift: () => percent(1),
  shareDifference: () => percent(2),
  shareEccentricity: () => percent(3),
  shareBuoyancy: () => percent(4),
});
