import type { DegreeRule } from "@/lib/metrology/deviation/choose-degree";
import type { BelowAgreement, DeviationFunction } from "@/lib/metrology/deviation/deviation-function";

/** How a sensor's deviation function is fitted; the procedure names it. */
export type FunctionChoice = {
  readonly isThroughZero: boolean;
  readonly degreeRule: DegreeRule;
  readonly method: DeviationFunction["uncertaintyMethod"];
  readonly allowBelow: BelowAgreement | null;
};

/**
 * Through 0 µV at 0 °C, as both ends of a thermocouple at one temperature give no emf; the lowest degree up to 2 at
 * which no residual exceeds twice the point's own u; nothing below the lowest measured point.
 */
export const defaultFunctionChoice: FunctionChoice = {
  isThroughZero: true,
  degreeRule: { kind: "residuals", maximumDegree: 2, limit: 2 },
  method: "propagated",
  allowBelow: null,
};
