import type { OrderSnapshot } from "./order-snapshot";
import { ruleSetLabels } from "./rule-set";

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "rule set audited heat treatment, decision rule guarded acceptance (guard band w = 1 × U)" */
export const agreedTermsText = (terms: { readonly ruleSet: string; readonly decisionRule: string }): string =>
  `rule set ${lowerFirst(terms.ruleSet)}, decision rule ${lowerFirst(terms.decisionRule)}`;

/** A request says no decision rule of its own; one for work once more has it from the order it repeats. */
const termsText = (terms: OrderSnapshot["terms"], repeats: string): string => {
  const ruleSet = terms["rule set"] ?? ruleSetLabels.none;
  if (repeats === "") return ruleSet === ruleSetLabels.none ? "" : `Rule set: ${ruleSet}`;
  const agreed = agreedTermsText({ ruleSet, decisionRule: terms["decision rule"] ?? "" });
  return `Once more, as for ${repeats}: ${agreed}. What the form of a request cannot say comes from there.`;
};

const lineText = (says: Readonly<Record<string, string>>, index: number): string =>
  `Line ${index + 1}: ${Object.entries(says)
    .filter(([, text]) => text !== "")
    .map(([label, text]) => `${label}: ${text}`)
    .join("; ")}`;

/**
 * What the customer wrote, kept as it came before the desk puts its own words in place of it (ISO/IEC 17025:2017, 7.1.8);
 * `repeats`: the order that is asked for once more.
 */
export const requestText = ({ terms, lines }: OrderSnapshot, repeats = ""): string =>
  [
    "As requested.",
    termsText(terms, repeats),
    ...lines.map(({ says }, index) => lineText(says, index)),
    terms.note && `Note: ${terms.note}`,
  ]
    .filter(Boolean)
    .join("\n")
    .slice(0, 8000);
