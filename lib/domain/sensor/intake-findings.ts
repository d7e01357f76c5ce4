import type { Condition, Polarity, TypeCheck } from "./labels";

export type IntakeChecks = {
  readonly condition: Condition;
  readonly conditionNote: string;
  readonly loopResistanceOhm: number | null;
  readonly insulationMegaohm: number | null;
  readonly polarity: Polarity;
  readonly typeCheck: TypeCheck;
};

/** Least insulation resistance at room temperature: laboratory policy, common practice for metal-sheathed sensors. */
export const leastInsulationMegaohm = 100;

/**
 * What the customer should hear of before the sensor is loaded (ISO/IEC 17025:2017, 7.4.3). None of it refuses the
 * sensor: it is here, and the record says how it came.
 */
export const intakeFindings = (checks: IntakeChecks): readonly string[] => [
  ...(checks.condition === "deviates" ? [`condition deviates (${checks.conditionNote})`] : []),
  ...(checks.insulationMegaohm !== null && checks.insulationMegaohm < leastInsulationMegaohm
    ? [`insulation ${checks.insulationMegaohm} MΩ is below ${leastInsulationMegaohm} MΩ`]
    : []),
  ...(checks.polarity === "reversed" ? ["polarity is reversed"] : []),
  ...(checks.typeCheck === "other-type" ? ["it reads as another type than ordered"] : []),
];
