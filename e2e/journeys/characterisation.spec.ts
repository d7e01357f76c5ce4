import type { Page } from "@playwright/test";
import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import type { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import { type SurveyedFurnace, simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { expect, test } from "../fixtures";

/** The furnace as it truly is in this journey: an invented scenario, simulated readings. */
const furnaceAt = (celsius: number): SurveyedFurnace => ({
  celsius,
  bestMillimetre: 400,
  fallCelsius: 0.34,
  places: { centre: 0, top: 0.4, right: 0.1, bottom: -0.36, left: -0.15 },
  driftCelsius: 0.12,
  noiseMicrovolt: 0.15,
});

const temperatures = [300, 700, 1100];

const csvOf = (readings: SurveyReadings): string => {
  switch (readings.kind) {
    case "positions":
      return [
        "arrangement,place,sensor,reading_uV",
        ...readings.rows.map((row) => [row.arrangement, row.place, row.sensor, row.value].join(",")),
      ].join("\n");
    case "stability":
      return ["minutes,monitor_uV", ...readings.rows.map((row) => `${row.minutes},${row.value}`)].join("\n");
    default:
      return [
        "position_mm,probe_uV,monitor_uV,minutes",
        ...readings.rows.map((row) => [row.millimetre, row.probe, row.monitor, row.minutes].join(",")),
      ].join("\n");
  }
};

const words: Readonly<Record<SurveyKind, string>> = {
  axial: "axial uniformity",
  positions: "differences between positions",
  stability: "stability over time",
  immersion: "immersion",
};

const openSurvey = async (page: Page, kind: SurveyKind, celsius: number): Promise<void> => {
  await page.getByRole("link", { name: `Record ${words[kind]} at ${celsius} °C` }).click();
  await expect(page.getByRole("main")).toContainText(`Danger: a tube at ${celsius} °C`);
};

const uploadSurvey = async (page: Page, kind: SurveyKind, celsius: number): Promise<void> => {
  await openSurvey(page, kind, celsius);
  const buffer = Buffer.from(csvOf(simulateSurvey(kind, furnaceAt(celsius), celsius)));
  await page
    .getByLabel(/^Or a file/)
    .setInputFiles({ name: `${kind}-${celsius}.csv`, mimeType: "text/csv", buffer });
  await page.getByRole("button", { name: "Record the survey" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("CH-");
};

/** Stop by stop as written down, one monitor reading a digit short: refused in its own field, the rest kept. */
const typeProfile = async (page: Page, celsius: number): Promise<void> => {
  await openSurvey(page, "axial", celsius);
  const survey = simulateSurvey("axial", furnaceAt(celsius), celsius);
  if (survey.kind !== "axial") throw new Error("another survey");
  for (const [index, row] of survey.rows.entries()) {
    const at = `of stop ${index + 1}`;
    await expect(page.getByLabel(`Depth ${at}, mm`)).toHaveValue(String(row.millimetre));
    await page.getByLabel(`Probe ${at}`, { exact: true }).fill(String(row.probe));
    await page.getByLabel(`Monitor ${at}`, { exact: true }).fill(String(row.monitor));
  }
  const main = page.getByRole("main");
  await expect(
    main.getByRole("img", { name: new RegExp(`Profile along the tube at ${celsius} °C`) }),
  ).toBeVisible();
  await expect(main).toContainText("over 60 mm");
  const fifth = page.getByLabel("Monitor of stop 5", { exact: true });
  const right = await fifth.inputValue();
  await fifth.fill("232");
  await page.getByRole("button", { name: "Record the survey" }).click();
  await expect(fifth).toHaveAttribute("aria-invalid", "true");
  await expect(main).toContainText(`in a survey at ${celsius} °C`);
  await expect(page.getByLabel("Probe of stop 4", { exact: true })).toHaveValue(
    String(survey.rows[3]?.probe),
  );
  await fifth.fill(right);
  await page.getByRole("button", { name: "Record the survey" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("CH-");
};

test("a characterisation is measured by one person and accepted by another", async ({ page, signInAs }) => {
  test.setTimeout(180_000);
  const main = page.getByRole("main");
  await signInAs("technician");
  await page.goto("/furnaces");
  await page.getByRole("link", { name: /^FUR-01/ }).click();
  await expect(main).toContainText("Hot work");
  await page
    .getByRole("region", { name: /^Bare tube/ })
    .or(page.locator("section").filter({ has: page.getByRole("heading", { name: /^Bare tube/ }) }))
    .getByRole("link", { name: "Plan a characterisation" })
    .click();
  await expect(main).toContainText("Common practice, no source");
  await page.getByLabel(/^Temperatures/).fill("300; 1300");
  await page.getByLabel("Probe that is moved").fill("REF-S-02");
  await page.getByLabel("Monitor that stays").fill("REF-S-01");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(main).toContainText("1300 °C is beyond this furnace, 200 to 1200 °C.");
  await page.getByLabel(/^Temperatures/).fill(temperatures.join("; "));
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/CH-\d{4}-\d{4}/);
  const number = (await page.getByRole("heading", { level: 1 }).textContent()) ?? "";
  await expect(main).toContainText("Axial uniformity at 300 °C");

  await typeProfile(page, 300);
  for (const celsius of temperatures)
    for (const kind of ["axial", "positions", "stability"] as const)
      if (kind !== "axial" || celsius !== 300) await uploadSurvey(page, kind, celsius);
  await uploadSurvey(page, "immersion", 1100);
  await expect(main.getByRole("img", { name: /Positions at 700 °C/ })).toBeVisible();
  await page.getByRole("button", { name: "Submit for acceptance" }).click();
  await expect(main).toContainText("Waits for another person");
  await expect(page.getByRole("button", { name: "Record the decision" })).toHaveCount(0);

  await page.context().clearCookies();
  await signInAs("signatory");
  await page.goto("/furnaces");
  await expect(main).toContainText("Waits for another person");
  await page.getByRole("link", { name: /^FUR-01/ }).click();
  const decision = page.getByRole("form", { name: /^Decide on/ });
  await decision.getByLabel("Return", { exact: true }).check();
  await decision.getByRole("button", { name: "Record the decision" }).click();
  await expect(main).toContainText("Say what is to be done before it can be accepted.");
  await decision.getByLabel("Accept", { exact: true }).check();
  await decision.getByRole("button", { name: "Record the decision" }).click();
  await expect(decision).toHaveCount(0);
  await expect(main.getByRole("listitem").filter({ hasText: "what runs use now" })).toContainText(number);
});
