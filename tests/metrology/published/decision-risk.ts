import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import { globalRisk } from "@/lib/metrology/conformity/global-risk";
import { type ConformityRule, guardBand } from "@/lib/metrology/conformity/guard-band";
import { specificRisk } from "@/lib/metrology/conformity/specific-risk";
import { deaverRisks, ilacG8, jcgm106Remembered } from "../vectors/decision-risk";
import { checks, tableChecks } from "./check";
import { unwrap } from "./unwrap";

/** Risk in percent of a result that lies at the acceptance limit of a wide tolerance; u = 1, U = 2. */
function riskAtLimit(rule: ConformityRule): number {
  const tolerance = 100;
  const u = { standardUncertaintyCelsius: 1, expandedCelsius: 2 };
  const { guardBandCelsius: w } = unwrap(guardBand(rule, u, tolerance));
  return 100 * specificRisk(true, tolerance - w, 1, -tolerance, tolerance).probability;
}

export const decisionRiskChecks = [
  ...tableChecks(deaverRisks, ({ u, limit, acceptance, risk }) => {
    const risks = globalRisk({
      priorMean: 0,
      priorStandardDeviation: 1,
      standardUncertainty: u,
      lowerTolerance: -limit,
      upperTolerance: limit,
      lowerAcceptance: -acceptance,
      upperAcceptance: acceptance,
    });
    return unwrap(risks)[risk];
  }),
  ...checks(ilacG8, { simple: () => riskAtLimit({ kind: "simple" }) }),
  ...tableChecks(jcgm106Remembered, ({ value, u, lower, upper }) =>
    conformanceProbability(value, u, lower, upper),
  ),
];
