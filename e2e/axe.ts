import { createRequire } from "node:module";
import type { Page } from "@playwright/test";

const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
/** WCAG 2.2 A and AA; target-size is off by default and on here. */
const options = {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"],
  rules: { "target-size": { enabled: true } },
};

type Violation = { readonly id: string; readonly nodes: readonly { readonly html: string }[] };

/** What axe finds on the page as it stands: rule and first place of each. */
export const violations = async (page: Page): Promise<string[]> => {
  await page.addScriptTag({ path: axe });
  const found = await page.evaluate(
    (given) =>
      (globalThis as unknown as { axe: { run: (o: unknown) => Promise<{ violations: Violation[] }> } }).axe
        .run(given)
        .then((result) => result.violations),
    options,
  );
  return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
};
