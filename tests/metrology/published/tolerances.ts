import { astmE230 } from "@/lib/metrology/conformity/astm-e230";
import { iec60584 } from "@/lib/metrology/conformity/iec-60584-1";
import type { ToleranceRuleSet } from "@/lib/metrology/conformity/rule-set";
import { toleranceIn } from "@/lib/metrology/conformity/tolerance-in";
import { astmE230Tolerances, iec60584Tolerances } from "../vectors/published-tolerances";
import { tableChecks } from "./check";

const by =
  (set: ToleranceRuleSet) =>
  ([type, toleranceClass, celsius]: readonly [string, string, number]): number => {
    const tolerance = toleranceIn(set, type, toleranceClass, celsius);
    return tolerance.kind === "defined" ? tolerance.celsius : Number.NaN;
  };

export const toleranceChecks = [
  ...tableChecks(iec60584Tolerances, by(iec60584)),
  ...tableChecks(astmE230Tolerances, by(astmE230)),
];
