import type { Page } from "@playwright/test";
import { expect, test } from "../fixtures";

// The assessor's question, answered from a certificate. Runs after `full-run`, in the same laboratory.

const certificate = /^C-\d{4}-0001$/;

const openCertificate = async (page: Page): Promise<string> => {
  await page.goto("/certificates");
  const link = page.getByRole("main").getByRole("link", { name: certificate }).first();
  const number = (await link.textContent()) ?? "";
  await link.click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(number);
  return number;
};

test("how do you know? from a number on a certificate to the national standard", async ({
  page,
  signInAs,
}) => {
  await signInAs("quality-manager");
  const main = page.getByRole("main");
  const number = await openCertificate(page);

  // The second number of the certificate opens its own chain.
  const value = main.getByRole("link", { name: /±/ }).nth(1);
  const printed = ((await value.textContent()) ?? "").replaceAll(/\s+/g, " ").trim();
  await value.click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`Traceability of ${number}`);
  const chosen = page
    .getByRole("navigation", { name: "Result whose chain is drawn" })
    .locator("[aria-current]");
  await expect(chosen).toContainText(printed.split(" ")[0] ?? "");
  await expect(main).toContainText(/How we know T-\d+ at /);
  await expect(main).toContainText("Frozen at sign-off");

  // Drawn: the reference, its calibration with issuer and U, and the national standard; one step is the largest.
  const drawing = main.locator("svg.figure-full");
  await expect(drawing.getByRole("link", { name: /^Reference REF-/ }).first()).toBeVisible();
  await expect(drawing).toContainText("U = ");
  await expect(drawing).toContainText(/largest step: \d+ % of u²/);
  await expect(drawing.getByRole("link", { name: /^National standard/ }).first()).toBeVisible();

  // The table is its twin: the same calibration, with issuer, route and days.
  const row = main.getByRole("row", { name: /^Calibration NTL-26-10431/ });
  await expect(row).toContainText("Northfell Thermometry Laboratory");
  await expect(row).toContainText(/National metrology institute|Accredited laboratory/);
  await expect(row).toContainText(/\d{4}-\d{2}-\d{2} to \d{4}-\d{2}-\d{2}/);

  // Every node opens its record: the reference's calibration.
  await drawing.getByRole("link", { name: /^Calibration NTL-26-10431/ }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Certificate NTL-26-10431");
  await expect(main).toContainText("What it stands on");

  // And from the other end: the standard shows the certificate among what stands on it, as of a day too.
  await page.goBack();
  await drawing
    .getByRole("link", { name: /^Reference REF-/ })
    .first()
    .click();
  await main.getByRole("link", { name: "Traceability" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Traceability of REF-/);
  await expect(main.getByRole("link", { name: certificate }).first()).toBeVisible();
  await expect(main).toContainText(/\d+ issued results, directly or through others/);
  await page.getByLabel("As of", { exact: true }).fill("2020-01-01");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page).toHaveURL(/on=2020-01-01/);
  await expect(main).toContainText("as of 2020-01-01");
  await expect(main).toContainText("no calibration was accepted and in force");
});

test("the same by keyboard, on a telephone's width, and on paper", async ({ page, signInAs }) => {
  await signInAs("quality-manager");
  const main = page.getByRole("main");
  const number = await openCertificate(page);
  await page.setViewportSize({ width: 390, height: 800 });
  await page.goto(`/trace/${number}`);
  await expect(main.locator("svg.figure-narrow")).toBeVisible();
  await expect(main.locator("svg.figure-full")).toBeHidden();
  const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(await sideways()).toBeLessThanOrEqual(0);
  // Nothing is clicked: Tab until a national standard has the focus, Enter opens the record that names it.
  for (let step = 0; step < 150; step++) {
    await page.keyboard.press("Tab");
    const name = await page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? "");
    if (name.startsWith("National standard")) break;
  }
  const focused = page.locator(":focus");
  await expect(focused).toHaveAttribute("aria-label", /^National standard/);
  const chain = page.url();
  await page.keyboard.press("Enter");
  await expect(page).not.toHaveURL(chain);
  await page.goBack();
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width: 1123, height: 794 });
  await expect(main.locator("svg.figure-full")).toBeVisible();
  await expect(page.getByRole("button", { name: "Show" })).toBeHidden();
});
