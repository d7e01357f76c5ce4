import type { TemperatureUnit } from "../order/labels";
import { temperatureUnitLabels } from "../order/labels";
import type { LineOptions } from "../order/options";
import type { OfferedLine, OfferedOrder } from "./offered-order";

type Rule = Pick<OfferedOrder, "decisionRule" | "guardBandRatio" | "falseAcceptancePercent">;

/** A decision rule as somebody reads it who never heard of one (ISO/IEC 17025:2017, 7.1.3 and 7.8.6). */
export const ruleInPlainWords = ({ decisionRule, guardBandRatio, falseAcceptancePercent }: Rule): string => {
  const band = `${guardBandRatio ?? "?"} times the uncertainty U`;
  switch (decisionRule) {
    case "none":
      return "The certificates state results with their uncertainty, and no “pass” or “fail”.";
    case "simple":
      return "A point passes when its error lies within the tolerance. The uncertainty is not taken off: near the limit up to one in two of such statements can be wrong.";
    case "guarded":
      return `A point passes when its error lies within the tolerance less ${band}, and fails when it lies beyond the tolerance by as much. Between, the statement is conditional, and says so.`;
    case "guarded-binary":
      return `A point passes when its error lies within the tolerance less ${band}; otherwise it fails.`;
    case "target-risk":
      return `A point passes when the risk that it is wrongly accepted is at most ${falseAcceptancePercent ?? "?"} %; otherwise it fails.`;
  }
};

const setsText = ({ sets, anneal }: LineOptions): readonly string[] => {
  const how = anneal ? ` at ${anneal.celsius} °C for ${anneal.hours} h` : "";
  if (sets === "as-received") return [];
  return sets === "both"
    ? [`measured as received, annealed${how}, measured again: two sets of results on one certificate`]
    : [`annealed${how}, then measured`];
};

export const optionsInPlainWords = (options: LineOptions, unit: TemperatureUnit): readonly string[] => [
  ...setsText(options),
  ...(options.correctionTable
    ? [`table of corrections every ${options.correctionTable.step} ${temperatureUnitLabels[unit]}`]
    : []),
  ...(options.coefficients ? ["coefficients of the deviation function"] : []),
  ...(options.budget ? ["uncertainty budget on the certificate"] : []),
  ...(options.evidence ? ["evidence file attached"] : []),
  ...(options.report === "per-lot"
    ? ["one certificate for the lot, or one for each furnace run where the lot is larger than a load"]
    : []),
  ...(options.language === "en" ? [] : ["certificate in English and German"]),
  ...(options.form === "full" ? [] : [`simplified certificate, as agreed: ${options.formAgreement ?? ""}`]),
];

/** ISO/IEC 17025:2017, 7.8.2.1 c and p: where, and by whom if not by the laboratory. */
export const placeInPlainWords = (line: OfferedLine): readonly string[] => [
  ...(line.performedAt === "customer-site"
    ? [`measured at your site: ${line.siteAddress.replaceAll("\n", ", ")}`]
    : []),
  ...(line.providerId === null ? [] : [`measured by an external provider: ${line.providerName}`]),
];
