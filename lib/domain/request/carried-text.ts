import { decisionRuleText } from "../order/labels";
import { lineOptionPhrases } from "../order/options";
import { agreedTermsText } from "../order/request-text";
import { ruleSetLabels } from "../order/rule-set";
import type { Order, OrderLine } from "../order/types";
import { termsOfUseText } from "../order/use-terms";

const lineText = ({ useTerms, temperatureUnit, options, marks }: OrderLine, index: number): string => {
  const beyondTheForm = { ...useTerms, useFromCelsius: null, useToCelsius: null };
  const said = [
    termsOfUseText(beyondTheForm, temperatureUnit),
    ...lineOptionPhrases(options, temperatureUnit).map((phrase) => `${phrase}.`),
    marks.performedAt === "customer-site" && `Done at your site: ${marks.siteAddress}.`,
    marks.providerId !== null && "Subcontracted as before.",
  ]
    .filter(Boolean)
    .join(" ");
  return said && `Sensors ${index + 1}: ${said}`;
};

/** What a request for an order once more carries over from it, in words for the customer; its lines as the form shows them. */
export const carriedText = (order: Order, lines: readonly OrderLine[]) => ({
  terms: `As for ${order.number}: ${agreedTermsText({
    ruleSet: ruleSetLabels[order.ruleSet],
    decisionRule: decisionRuleText(order),
  })}; the laboratory confirms it.`,
  lines: lines.map(lineText).filter(Boolean),
});
