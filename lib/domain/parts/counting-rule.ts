import { type CountingRule, countingRules } from "../order/options";

export const asCountingRule = (stored: string): CountingRule => {
  const known = countingRules.find((one) => one === stored);
  if (!known) throw new Error(`a counting rule is stored as ${stored}, which none can be`);
  return known;
};
