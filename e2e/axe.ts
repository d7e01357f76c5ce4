import { createRequire } from "node:module";
import type { Page } from "@playwright/test";

const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
/** WCAG 2.2 A and AA; target-size is off by default and on here. */
const everyRule = {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"],
  rules: { "target-size": { enabled: true } },
  resultTypes: ["violations"],
};
/** What may differ between light and dark on a page that stands. */
const coloursAlone = {
  runOnly: { type: "rule", values: ["color-contrast", "link-in-text-block"] },
  resultTypes: ["violations"],
};

type Violation = { readonly id: string; readonly nodes: readonly { readonly html: string }[] };

const run = async (page: Page, options: object): Promise<string[]> => {
  const found = await page.evaluate(
    (given) =>
      (globalThis as unknown as { axe: { run: (o: unknown) => Promise<{ violations: Violation[] }> } }).axe
        .run(given)
        .then((result) => result.violations),
    options,
  );
  return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
};

/** What axe finds on the page as it stands: rule and first place of each. */
export const violations = async (page: Page): Promise<string[]> => {
  await page.addScriptTag({ path: axe });
  return run(page, everyRule);
};

/** The same in light, and what its colours come to in dark. */
export const violationsInBoth = async (page: Page): Promise<string[]> => {
  await page.emulateMedia({ colorScheme: "light" });
  const light = await violations(page);
  await page.emulateMedia({ colorScheme: "dark" });
  const dark = await run(page, coloursAlone);
  return [...light, ...dark.map((text) => `in dark, ${text}`)];
};
