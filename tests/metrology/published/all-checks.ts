import type { Check } from "./check";
import { decisionRiskChecks } from "./decision-risk";
import { eaS2Checks } from "./ea-4-02-s2";
import { eaS5Checks } from "./ea-4-02-s5";
import { eaS9Checks } from "./ea-4-02-s9";
import { gumH1Checks } from "./gum-h1";
import { gumH2Checks } from "./gum-h2";
import { gumH3Checks } from "./gum-h3";
import { inverseBandChecks } from "./inverse-bands";
import { monteCarloChecks } from "./jcgm-101";
import { nistExampleChecks } from "./nist-examples";
import { platinumChecks } from "./platinum";
import { quamChecks } from "./quam";
import { strdChecks } from "./strd";
import { studentChecks } from "./student";
import { toleranceChecks } from "./tolerances";

/** Every published value the engine is held to. The inventory runs this list and counts this list. */
export const allChecks: readonly Check[] = [
  ...platinumChecks,
  ...gumH1Checks,
  ...gumH2Checks,
  ...gumH3Checks,
  ...eaS5Checks,
  ...eaS2Checks,
  ...eaS9Checks,
  ...monteCarloChecks,
  ...quamChecks,
  ...nistExampleChecks,
  ...studentChecks,
  ...strdChecks,
  ...toleranceChecks,
  ...decisionRiskChecks,
  ...inverseBandChecks,
];
