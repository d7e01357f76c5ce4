import { Evidence } from "@/lib/domain/evidence/schema";
import type { Bench } from "@/lib/domain/order/ideal-run";
import { BudgetInputs } from "@/lib/domain/run/budget-inputs";
import { procedures } from "@/lib/domain/run/procedure-defaults";
import { buildEvidence } from "../evidence/build-evidence";

/** An invented bench: two type S references from 250 °C to 1150 °C, one tube, the laboratory's own procedure. */
export const inventedBench = (change: Partial<Bench> = {}): Bench => {
  const { configuration, references, voltmeter, scanner, junctions } = Evidence.parse(buildEvidence());
  const [junction] = junctions;
  if (!junction) throw new Error("the invented evidence has a junction");
  return {
    budget: BudgetInputs.parse(procedures["tube-furnace"]),
    configuration,
    references,
    voltmeter,
    scanner,
    junction,
    minimumCelsius: 100,
    maximumCelsius: 1200,
    ...change,
  };
};

/** The rule for sensors that were not investigated: a fifth of class 2, as a rectangle's half-width. */
export const withTwentyPercentRule = (bench: Bench): Bench => {
  const inputs = bench.budget.sensors.K;
  if (!inputs) throw new Error("the procedure has a budget for type K");
  const inhomogeneity = {
    kind: "tolerance-share",
    share: 0.2,
    toleranceClass: "2",
    source: "20 % of class 2, not investigated",
  } as const;
  return {
    ...bench,
    budget: { ...bench.budget, sensors: { ...bench.budget.sensors, K: { ...inputs, inhomogeneity } } },
  };
};
