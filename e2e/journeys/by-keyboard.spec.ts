import type { Page } from "@playwright/test";
import { expect, test } from "../fixtures";
import { freshCode } from "../one-time-code";

// Runs before `full-run`, which empties the queue: journeys go by name, in one laboratory.

/** Tabs until what has focus carries this name; nothing is clicked and nothing is focused by script. */
const tabTo = async (page: Page, name: RegExp): Promise<void> => {
  for (let step = 0; step < 120; step++) {
    await page.keyboard.press("Tab");
    const text = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement | null;
      const labels = (element as HTMLInputElement | null)?.labels;
      return [
        element?.textContent,
        element?.getAttribute("aria-label"),
        ...(labels ? [...labels].map((label) => label.textContent) : []),
      ].join(" ");
    });
    if (name.test(text)) return;
  }
  throw new Error(`Tab never reached ${name}`);
};

test("a signatory signs in and reads a result by keyboard alone", async ({ page, signIns }) => {
  const person = signIns.find(({ role }) => role.includes("signatory"));
  await page.goto("/sign-in");
  // The first field has focus already.
  await page.keyboard.type(person?.email ?? "");
  await page.keyboard.press("Tab");
  await page.keyboard.type(person?.password ?? "");
  await page.keyboard.press("Enter");
  if (person?.codeKey !== undefined) {
    await page.waitForURL((url) => url.pathname.startsWith("/second-factor"));
    await page.keyboard.type(await freshCode({ email: person.email, codeKey: person.codeKey }));
    await page.keyboard.press("Enter");
  }
  await page.waitForURL((url) => !/sign-?in|api\/auth|second-factor/.test(url.pathname));

  await page.keyboard.press("Tab");
  await expect(page.locator(":focus"), "the first stop is the way past the navigation").toContainText(
    /skip|content/i,
  );
  await tabTo(page, /^Review/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Review");
  await tabTo(page, /R-\d{4}-0001/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/R-\d{4}-0001/);
  await tabTo(page, /±/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main")).toContainText("Budget");
  const first = page.url();
  await page.keyboard.press("n");
  await expect(page).not.toHaveURL(first);
});
