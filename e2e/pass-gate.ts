import type { Page } from "@playwright/test";
import { expect } from "./fixtures";

type SignInAs = (role: string) => Promise<unknown>;

/** The same-day checks with figures in order, as far as the page asks for them. */
export const checkBench = async (page: Page): Promise<void> => {
  await page.getByLabel("Switched on for").fill("2");
  await page.getByLabel("Voltmeter shorted").fill("0.1");
  await page.getByLabel("Voltage check point applied").fill("10000");
  await page.getByLabel("Voltmeter reads").fill("10000.4");
  for (const field of await page.getByLabel(/^Channel .* shorted, µV$/).all()) await field.fill("0.2");
  for (const field of await page.getByLabel(/^Thermometer beside .* reads/).all()) await field.fill("0.01");
  await page.getByRole("button", { name: "Record these checks" }).click();
  await expect(page.getByRole("main")).toContainText(/\d+ checks recorded/);
};

const forms = (page: Page) => page.getByRole("form", { name: /^Reason: / });

/** A reason for each row that this person may set aside. */
export const giveReasons = async (page: Page, reason: string): Promise<void> => {
  for (let left = await forms(page).count(); left > 0; left--) {
    const form = forms(page).first();
    await form.getByLabel(/^Why it may start/).fill(reason);
    await form.getByRole("button", { name: "Set aside with this reason" }).click();
    await expect(forms(page)).toHaveCount(left - 1);
  }
};

/** Through the gate by the page: a technician checks the bench and starts, a quality manager answers for the rest. */
export const passGate = async (page: Page, run: string, signInAs: SignInAs): Promise<void> => {
  await page.goto(`/runs/${run}/gate`);
  await checkBench(page);
  await giveReasons(page, "As in the journeys before: looked at by hand.");
  if ((await page.getByText(/^Only .* may set this aside\.$/).count()) > 0) {
    await page.context().clearCookies();
    await signInAs("quality-manager");
    await page.goto(`/runs/${run}/gate`);
    await giveReasons(page, "Agreed at the bench this morning, with the checks as they are.");
    await page.context().clearCookies();
    await signInAs("technician");
    await page.goto(`/runs/${run}/gate`);
  }
  await expect(page.getByRole("main").getByRole("status").first()).toContainText("May start");
  await page.getByRole("button", { name: "Start the run" }).click();
  await page.waitForURL(/\/readings$/);
};
