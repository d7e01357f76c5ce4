import type { Page } from "@playwright/test";
import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import type { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import { readingsFile } from "@/lib/station/simulation/readings-file";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { type SurveyedFurnace, simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { acceptOrder } from "../accept-order";
import { expect, test } from "../fixtures";
import { passGate } from "../pass-gate";

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

/** Before the run below began: its simulated six hours may reach into yesterday. */
const measuredOn = new Date(Date.now() - 2 * 86_400_000).toISOString().slice(0, 10);

const openSurvey = async (page: Page, kind: SurveyKind, celsius: number): Promise<void> => {
  await page.getByRole("link", { name: `Record ${words[kind]} at ${celsius} °C` }).click();
  await expect(page.getByRole("main")).toContainText(`Danger: a tube at ${celsius} °C`);
  await page.getByLabel("Measured on").fill(measuredOn);
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

/** A simulated run's file (invented): two references, one sensor of type K and a shorted channel, until now. */
const scannerFile = (): Buffer => {
  const { evidence } = simulateRun(31);
  const channels = evidence.scans.channels.filter(({ channel }) =>
    ["101", "102", "108", "120"].includes(channel),
  );
  const seconds = Math.max(...channels.flatMap((channel) => channel.seconds));
  const startedAt = new Date(Math.floor(Date.now() / 1000 - seconds) * 1000).toISOString();
  return Buffer.from(readingsFile({ ...evidence, scans: { ...evidence.scans, startedAt, channels } }));
};

const orderSensor = async (page: Page): Promise<void> => {
  const heading = page.getByRole("heading", { level: 1 });
  await page.goto("/orders/new");
  await page.getByLabel("Customer", { exact: true }).selectOption({ label: "Oakes & Bellamy Glass" });
  await page.getByLabel("How many").fill("1");
  await page.getByLabel("Construction").fill("Mineral-insulated, 3 mm, insulated junction");
  await page.getByLabel("Setpoints (may stay empty)").fill("700");
  await page.getByRole("button", { name: "Record the order" }).click();
  await expect(heading).toContainText(/O-\d{4}-\d{4}/);
  const order = /O-\d{4}-\d{4}/.exec((await heading.textContent()) ?? "")?.[0] ?? "";
  await acceptOrder(page);
  await page.goto(`/orders/${order}/receive`);
  await page.getByLabel("Serial numbers").fill("LEHR-21");
  await page.getByRole("button", { name: "Take them in" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/receive"));
};

const makeRun = async (page: Page): Promise<string> => {
  const heading = page.getByRole("heading", { level: 1 });
  await page.goto("/runs/new");
  await page
    .getByRole("row", { name: /LEHR-21/ })
    .getByRole("checkbox")
    .check();
  for (const tag of ["REF-S-01", "REF-S-02"]) await page.getByLabel(tag, { exact: true }).check();
  await page.getByRole("button", { name: "Place them" }).click();
  // What is still being characterised is shown and cannot be chosen.
  const block = page.getByLabel("Furnace and configuration").locator("option", { hasText: "Alumina block" });
  await expect(block).toContainText("not characterised");
  await expect(block).toBeDisabled();
  for (const [row, channel] of [
    [/REF-S-01/, "101"],
    [/LEHR-21/, "102"],
    [/REF-S-02/, "108"],
    [/shorted/, "120"],
  ] as const)
    await page
      .getByRole("table")
      .getByRole("row")
      .filter({ hasText: row })
      .getByLabel(/^Channel of/)
      .fill(channel);
  await page.getByRole("button", { name: "Make the run" }).click();
  await expect(heading).toContainText(/R-\d{4}-\d{4}/);
  return /R-\d{4}-\d{4}/.exec((await heading.textContent()) ?? "")?.[0] ?? "";
};

/** The cells of the figures that runs use now, at 700 °C: axial with its u, positions with its u. */
const figuresInUse = async (page: Page): Promise<{ number: string; axial: number; positions: number }> => {
  await page.goto("/furnaces");
  await page.getByRole("link", { name: /^FUR-01/ }).click();
  const inUse = page.getByRole("listitem").filter({ hasText: "what runs use now" });
  const caption = (await inUse.getByRole("table").locator("caption").textContent()) ?? "";
  const cells = await inUse.getByRole("row", { name: /^700/ }).getByRole("cell").allTextContents();
  const [axial = 0, axialU = 0, positions = 0, positionsU = 0] = cells.map((cell) =>
    Number(cell.replace("±", "").trim()),
  );
  const combined = (half: number, u: number) => Math.sqrt(half ** 2 / 3 + u ** 2);
  return {
    number: /CH-\d{4}-\d{4}/.exec(caption)?.[0] ?? "",
    axial: combined(axial, axialU),
    positions: combined(positions, positionsU),
  };
};

test("a run's budget shows what the furnace was found to be", async ({ page, signInAs }) => {
  const main = page.getByRole("main");
  await signInAs("front-desk");
  await orderSensor(page);
  await page.context().clearCookies();
  await signInAs("technician");
  const found = await figuresInUse(page);
  const run = await makeRun(page);
  await passGate(page, run, signInAs);
  await page
    .getByLabel("Readings file")
    .setInputFiles({ name: "lehr-21.csv", mimeType: "text/csv", buffer: scannerFile() });
  await page.getByRole("button", { name: "Upload" }).click();
  await expect(main).toContainText("lehr-21.csv");
  await page.goto(`/runs/${run}/windows`);
  await page.getByRole("button", { name: "Accept the proposed window" }).click();
  await expect(main).toContainText("Accepted as proposed");
  await page.goto(`/runs/${run}/results`);
  await page.getByRole("button", { name: "Evaluate the run" }).click();
  await page
    .getByRole("row", { name: /LEHR-21/ })
    .getByRole("link", { name: /±/ })
    .click();
  for (const [line, u, what] of [
    [/^Axial non-uniformity/, found.axial, "probe moved along the tube"],
    [/^Radial non-uniformity/, found.positions, "thermocouples exchanged between positions"],
  ] as const) {
    const row = main.getByRole("row", { name: line });
    await expect(row).toContainText(`characterisation ${found.number} of`);
    await expect(row).toContainText(what);
    await expect(row).toContainText("half range over 60 mm; as found at 700 °C");
    const stated = Number(/[\d.]+/.exec((await row.getByRole("cell").nth(1).textContent()) ?? "")?.[0]);
    expect(Math.abs(stated - u)).toBeLessThan(0.002);
  }
  await main
    .getByText(/lines at zero, with the reason of each/)
    .first()
    .click();
  await expect(main).toContainText("stated apart, along the tube and between positions");
});
