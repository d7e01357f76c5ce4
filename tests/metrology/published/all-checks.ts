import type { Check } from "./check";
import { gumH1Checks } from "./gum-h1";
import { gumH2Checks } from "./gum-h2";
import { gumH3Checks } from "./gum-h3";
import { platinumChecks } from "./platinum";

/** Every published value the engine is held to. The inventory runs this list and counts this list. */
export const allChecks: readonly Check[] = [
  ...platinumChecks,
  ...gumH1Checks,
  ...gumH2Checks,
  ...gumH3Checks,
];
