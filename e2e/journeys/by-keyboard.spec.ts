import type { Page } from "@playwright/test";
import { expect, test } from "../fixtures";
import { freshCode } from "../one-time-code";

// Signs what the demonstration's run has waiting; the journeys that come after it, `withdrawal` among them, find it signed.

/** Tabs until what has focus carries this name; nothing is clicked and nothing is focused by script. */
const tabTo = async (page: Page, name: RegExp): Promise<void> => {
  for (let step = 0; step < 240; step++) {
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

/** From one result that must be opened to the next, until n leads back to the run and what is to be decided there. */
const readWhatMustBe = async (page: Page, run: string): Promise<void> => {
  for (let opened = 0; new URL(page.url()).pathname !== run; opened++) {
    expect(opened, "n comes to an end").toBeLessThan(60);
    await expect(page.getByText("Opened by you")).toBeVisible();
    const here = page.url();
    await page.keyboard.press("n");
    await expect(page).not.toHaveURL(here);
  }
};

test("a signatory signs in, reads what must be read and signs it by keyboard alone", async ({
  page,
  signIns,
}) => {
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
  const main = page.getByRole("main");
  // Seen, and so recorded; n leads from one that must be opened to the next, until none is left.
  await expect(main.getByText("Opened by you")).toBeVisible();
  await expect(main).toContainText(/opened \d+ of \d+ that must be/);
  await expect(main.getByRole("table", { name: /Monte|drawn/ })).toContainText("Monte Carlo");
  const first = page.url();
  await page.keyboard.press("n");
  await expect(page).not.toHaveURL(first);

  // A remark stays at its number, is counted in the run, and is settled where it stands.
  await page.goto(first.replace(/(\/review\/[^/]+).*/, "$1"));
  const waiting = page.getByRole("row", { name: /OB-2218/ });
  await waiting.getByRole("link", { name: /±/ }).first().focus();
  await page.keyboard.press("Enter");
  await tabTo(page, /^Remark on the error/);
  await page.keyboard.press("Enter");
  await tabTo(page, /Remark$/);
  await page.keyboard.type("Is this the sensor that was bent?");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(main.locator("[data-remark=open]")).toContainText("bent");
  await page.keyboard.press("u");
  await expect(waiting).toContainText("1 remark");
  await page.goBack();
  await tabTo(page, /^Answer\s*$/);
  await page.keyboard.press("Enter");
  await tabTo(page, /Answer$/);
  await page.keyboard.type("No, that one was put back.");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(main.locator("[data-remark=settled]")).toContainText("put back");

  await readWhatMustBe(page, new URL(first).pathname.split("/").slice(0, 3).join("/"));
  await tabTo(page, /Your password/);
  await page.keyboard.type(person?.password ?? "");
  await tabTo(page, /A one-time code/);
  await page.keyboard.type(await freshCode({ email: person?.email ?? "", codeKey: person?.codeKey ?? "" }));
  await tabTo(page, /^Sign off\s*$/);
  await page.keyboard.press("Space");
  await expect(main.getByRole("link", { name: /^C-/ })).toHaveCount(6);
});
