import { expect, test } from "@playwright/test";
import { GOLDEN } from "../../tests/metrology/golden-bits";
import { serveSources } from "../serve-sources";

test("metrology gives the same bits in this browser as in Node", async ({ page }) => {
  const served = await serveSources(page);
  await page.goto(`${served.origin}/`);
  const bits = await page.evaluate(async () => {
    const module = (await import(
      /* webpackIgnore: true */ `${location.origin}/tests/metrology/golden-bits`
    )) as {
      readonly goldenBits: () => string;
    };
    return module.goldenBits();
  });
  expect(bits).toBe(GOLDEN.bits);
  // That it was our own source that ran, most of it, and not a file left over from a build.
  expect(served.files().filter((file) => file.startsWith("lib/metrology/")).length).toBeGreaterThan(60);
});
