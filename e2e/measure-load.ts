import type { Page } from "@playwright/test";
import type { ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { dwellFile, type Wired } from "./dwell-file";
import { expect } from "./fixtures";
import { passGate } from "./pass-gate";
import { pressSignOff } from "./press-sign-off";

/** A run by its number, and what lies in it by serial number or tag, in the order of the channels. */
export type Load = { readonly run: string; readonly names: readonly string[] };
/** What each of a load is, and the setpoints. */
export type Heated = {
  readonly typeOf: (name: string) => ThermocoupleType;
  readonly celsius: readonly number[];
};

export const main = (page: Page) => page.getByRole("main");
export const heading = (page: Page) => page.getByRole("heading", { level: 1 });
export const headed = async (page: Page, pattern: RegExp): Promise<string> => {
  await expect(heading(page)).toContainText(pattern);
  return pattern.exec((await heading(page).textContent()) ?? "")?.[0] ?? "";
};

/** The load as planned: which channel has whom. */
export const plan = async (page: Page, serials: readonly string[]) => {
  await page.goto("/runs/new");
  for (const serial of serials)
    await page
      .getByRole("row", { name: new RegExp(`${serial}\\b`) })
      .getByRole("checkbox")
      .check();
  for (const tag of ["REF-S-01", "REF-S-02"]) await page.getByLabel(tag, { exact: true }).check();
  await page.getByRole("button", { name: "Place them" }).click();
  const names = ["REF-S-01", "REF-S-02", ...serials, "shorted"];
  const rows = page.getByRole("table").getByRole("row");
  for (const [index, name] of names.entries())
    await rows
      .filter({ hasText: new RegExp(`${name}\\b`) })
      .getByLabel(/^Channel of/)
      .fill(String(201 + index));
  await page.getByRole("button", { name: "Make the run" }).click();
  return { run: await headed(page, /R-\d{4}-\d{4}/), names };
};

const wired = (names: readonly string[], typeOf: Heated["typeOf"]): readonly Wired[] =>
  names.map((name, index) => ({
    channel: String(201 + index),
    type: name === "shorted" ? null : typeOf(name),
    errorCelsius: name.startsWith("REF") || name === "shorted" ? 0 : 0.2 + 0.03 * index,
  }));

/** Through the gate, the furnace's file, its windows and the evaluation. */
export const measure = async (
  page: Page,
  { run, names }: Load,
  { typeOf, celsius }: Heated,
  signInAs: (role: string) => Promise<unknown>,
) => {
  await passGate(page, run, signInAs);
  await page.getByLabel("Readings file").setInputFiles({
    ...{ name: `${run}.csv`, mimeType: "text/csv" },
    buffer: dwellFile(wired(names, typeOf), celsius, names.length),
  });
  await page.getByRole("button", { name: "Upload" }).click();
  await expect(main(page)).toContainText(`${run}.csv`);
  await page.goto(`/runs/${run}/windows`);
  const accept = page.getByRole("button", { name: "Accept the proposed window" });
  await expect(accept).toHaveCount(celsius.length);
  for (let left = celsius.length - 1; left >= 0; left--) {
    await accept.first().click();
    await expect(accept).toHaveCount(left);
    await expect(main(page).getByText("Accepted as proposed")).toHaveCount(celsius.length - left);
  }
};

export const evaluateAndSubmit = async (page: Page, run: string) => {
  await page.goto(`/runs/${run}/results`);
  await page.getByRole("button", { name: "Evaluate the run" }).click();
  await expect(main(page)).toContainText("±");
  await page.getByLabel(/^Why the tips/).fill("Checked with the load before, on the same connections.");
  await page.getByRole("button", { name: "Submit for review" }).click();
  await expect(main(page)).toContainText("Submitted for review");
};

/** What is chosen from the start is signed off; there are as many certificates after it. */
export const signOff = async (page: Page, run: string, certificates: number) => {
  await page.goto(`/review/${run}`);
  await pressSignOff(page);
  await expect(main(page).getByRole("link", { name: /^C-\d{4}-\d{4}$/ })).toHaveCount(certificates);
};
