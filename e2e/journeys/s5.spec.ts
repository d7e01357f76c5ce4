import type { Page } from "@playwright/test";
import { expect, test } from "../fixtures";
import { passGate } from "../pass-gate";
import { pdfText } from "../pdf";
import { pressSignOff } from "../press-sign-off";

/**
 * EA-4/02, example S5, through the four people's hands. Readings, uncertainties and the result are published; the times
 * of the readings and the references' deviations are ours. Published result: 36 230 µV ± 50 µV (k = 2).
 */
const readings: readonly (readonly [seconds: number, channel: string, microvolts: number])[] = [
  [0, "REF-S5-1", 10500],
  [60, "T-000007", 36245],
  [120, "REF-S5-2", 10503],
  [180, "REF-S5-2", 10503],
  [240, "T-000007", 36248],
  [300, "REF-S5-1", 10503],
  [360, "REF-S5-1", -10503],
  [420, "T-000007", -36248],
  [480, "REF-S5-2", -10505],
  [540, "REF-S5-2", -10505],
  [600, "T-000007", -36251],
  [660, "REF-S5-1", -10504],
];

const planRun = async (page: Page): Promise<string> => {
  await page.goto("/runs/new");
  for (const tag of ["T-000007", "REF-S5-1", "REF-S5-2"]) await page.getByLabel(tag, { exact: true }).check();
  await page.getByRole("button", { name: "Place them" }).click();
  await page
    .getByLabel("Furnace and configuration")
    .selectOption({ label: "FUR-S5, Worked example S5, 3 places" });
  await page.getByLabel("Voltmeter").selectOption({ label: "VM-S5" });
  await page.getByLabel("Scanner").selectOption({ label: "SC-S5 (no calibration recorded)" });
  await page.getByLabel("Procedure").selectOption({ label: "EA-4/02 example S5, as published, revision 1" });
  for (const what of ["REF-S5-1", "T-000007", "REF-S5-2", "shorted channel"])
    await page.getByLabel(`Junction of ${what}`).selectOption({ label: "ICE-S5 (0 °C)" });
  await page.getByRole("button", { name: "Make the run" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Run R-");
  return ((await page.getByRole("heading", { level: 1 }).textContent()) ?? "").replace("Run ", "");
};

const warmTips = async (page: Page, run: string): Promise<void> => {
  await page.goto(`/runs/${run}/load`);
  for (const place of ["R1", "1", "R2"]) {
    await page
      .getByLabel("Place", { exact: true })
      .selectOption({ label: await optionStarting(page, `${place}: `) });
    await page.getByLabel("Rise on its channel").fill("41");
    await page.getByLabel("No other channel moved").check();
    await page.getByRole("button", { name: "Record this tip" }).click();
    await expect(page.getByRole("row", { name: new RegExp(`^${place} .*41`) })).toBeVisible();
  }
};

const optionStarting = async (page: Page, start: string): Promise<string> => {
  const options = await page.getByLabel("Place", { exact: true }).locator("option").allInnerTexts();
  return options.find((option) => option.startsWith(start)) ?? "";
};

const typeEntry = async (
  page: Page,
  entry: "First entry" | "Second entry, from the record again",
): Promise<void> => {
  for (const [index, [seconds, channel, microvolts]] of readings.entries()) {
    const at = `${entry}, reading ${index + 1},`;
    await page.getByLabel(`${at} time in s`).fill(String(seconds));
    const options = await page.getByLabel(`${at} channel`).locator("option").allInnerTexts();
    const label = options.find((option) => option.endsWith(channel)) ?? "";
    await page.getByLabel(`${at} channel`).selectOption({ label });
    await page.getByLabel(`${at} emf in µV`).fill(String(microvolts));
    await page
      .getByLabel(`${at} polarity`)
      .selectOption({ label: microvolts < 0 ? "− reversed" : "+ forward" });
  }
};

test("EA-4/02 S5, from the typed readings to the customer's PDF", async ({ page, signInAs }) => {
  await signInAs("technician");
  const run = await planRun(page);
  await warmTips(page, run);
  await passGate(page, run, signInAs);

  await page.goto(`/runs/${run}/readings`);
  await page.getByText("Open the two entries").click();
  await typeEntry(page, "First entry");
  await typeEntry(page, "Second entry, from the record again");
  // Once with a slip of the finger: nothing is stored, and what was typed stays.
  await page.getByLabel("Second entry, from the record again, reading 5, emf in µV").fill("36284");
  await page.getByRole("button", { name: "Compare and store" }).click();
  await expect(page.getByRole("main").getByRole("alert").first()).toContainText(/nothing was stored/i);
  await expect(page.getByLabel("Second entry, from the record again, reading 4, emf in µV")).toHaveValue(
    "10503",
  );
  await page.getByLabel("Second entry, from the record again, reading 5, emf in µV").fill("36248");
  await page.getByRole("button", { name: "Compare and store" }).click();
  await expect(page.getByRole("main")).toContainText("12 readings");

  await page.goto(`/runs/${run}/windows`);
  await page.getByRole("button", { name: "Accept the proposed window" }).click();
  await expect(page.getByRole("main")).toContainText("Accepted as proposed");

  await page.goto(`/runs/${run}/results`);
  await page.getByRole("button", { name: "Evaluate the run" }).click();
  await expect(page.getByRole("main")).toContainText("1000");
  await page.getByRole("button", { name: "Submit for review" }).click();
  await expect(page.getByRole("main")).toContainText("Submitted for review");

  await page.context().clearCookies();
  await signInAs("signatory");
  await page.goto(`/review/${run}`);
  await pressSignOff(page);
  await expect(page.getByRole("main")).toContainText(/C-\d{4}-\d{4}/);
  const number = /C-\d{4}-\d{4}/.exec((await page.getByRole("main").textContent()) ?? "")?.[0] ?? "";

  await page.context().clearCookies();
  await signInAs("Brandt");
  await page.goto("/portal/certificates");
  const downloading = page.waitForEvent("download");
  await page
    .getByRole("link", { name: new RegExp(number) })
    .first()
    .click();
  const text = await pdfText(await downloading);
  expect(text).toContain(number);
  expect(text).toContain("S5-UNKNOWN");
  expect(text).toContain("36 230");
  expect(text).toMatch(/36 230 .{0,12}50 /);
  expect(text).toContain("1000.5");
  expect(text).toContain("End of certificate");
});
