import type { Locator } from "@playwright/test";
import { expect, test } from "../fixtures";
import { openWhatMustBe } from "../open-what-must-be";
import { pdfText } from "../pdf";
import { pressSignOff } from "../press-sign-off";

/** The demonstration's full run: invented, six sensors of two customers; one customer's are certified already. */
const run = "R-2026-0001";
const opinion = "In our opinion it is fit to check a furnace of class 5 (an invented opinion).";

const optionOf = async (form: Locator, name: RegExp): Promise<string> =>
  (await form.getByRole("option", { name }).textContent()) ?? "";

test("the signatory reads a result down to its readings, and signs off what waits", async ({
  page,
  signInAs,
}) => {
  await signInAs("signatory");
  await page.goto("/review");
  await page.getByRole("link", { name: /^R-\d{4}-0001$/ }).click();
  const main = page.getByRole("main");
  await expect(main).toContainText("Stands out");
  await expect(main).toContainText("No tolerance defined");
  // A number is a door: from error ± U to the budget, the window and the standards.
  await page
    .getByRole("row", { name: /OB-2218/ })
    .getByRole("link", { name: /±/ })
    .first()
    .click();
  for (const part of [
    "Reference calibration",
    "Sensor inhomogeneity",
    "REF-S-01",
    "VM-01",
    "SC-01",
    "ICE-01",
  ])
    await expect(main).toContainText(part);

  // "What if": tried in the browser, nothing stored.
  await main.getByText("Try other uncertainties").click();
  const answer = main.getByRole("status");
  await expect(answer).toContainText("instead of");
  const stated = /instead of\s*([\d.]+)/.exec((await answer.textContent()) ?? "")?.[1] ?? "none";
  await main.getByLabel(/^u of Sensor inhomogeneity/).fill("1000");
  await expect(answer).toContainText("Largest: Sensor inhomogeneity");
  await main.getByLabel(/^u of Sensor inhomogeneity/).fill("minus one");
  await expect(main).toContainText("Type a number from 0 up");
  await main.getByRole("button", { name: "As evaluated" }).click();
  await expect(answer).toContainText(new RegExp(`U ${stated.replace(".", "\\.")}\\s*°C`));

  await main.getByRole("link", { name: "Deviation function" }).click();
  await expect(main).toContainText("Degrees tried");
  await main.getByRole("link", { name: "In °F" }).click();
  await expect(main.getByRole("table", { name: /every 50 °F/ })).toContainText("1000");
  await page.goBack();
  await page.goBack();

  await page.goBack();
  const draft = page.getByRole("link", { name: /Draft/ }).first();
  const address = (await draft.getAttribute("href")) ?? "";
  const file = await page.request.get(address);
  expect(file.headers()["content-type"]).toContain("application/pdf");

  // An opinion, marked as such on the certificate of its sensor.
  await page.getByText("Write an opinion or interpretation").click();
  const written = page.getByRole("form", { name: "Write an opinion" });
  await written.getByLabel("Sensor").selectOption({ label: await optionOf(written, /OB-2218/) });
  await written.getByLabel("Opinion", { exact: true }).fill(opinion);
  await written.getByLabel("What it rests on").fill("Its results as received (invented).");
  await written.getByRole("button", { name: "Write it" }).click();
  await expect(main.getByRole("listitem").filter({ hasText: opinion })).toContainText("Odile Marchetti");

  await openWhatMustBe(page);
  // Being signed in is not enough: who signs says what it means, and shows that they are there.
  await expect(main).toContainText("I reviewed these results and authorise their release.");
  await page.getByLabel("Your password").fill("of somebody else");
  await page.getByLabel("A one-time code").fill("000000");
  await page.getByRole("button", { name: "Sign off" }).click();
  await expect(main).toContainText("This is not your password");
  await expect(page.getByLabel("Your password")).toHaveValue("");
  await pressSignOff(page);
  await expect(main.getByRole("link", { name: /^C-/ })).toHaveCount(6);
});

test("the customer sees their own alone, and the numbers of the screen in the PDF", async ({
  page,
  signInAs,
}) => {
  await signInAs("Oakes");
  const main = page.getByRole("main");
  await page.goto("/portal/certificates");
  await expect(main).toContainText("OB-2218");
  await expect(main).not.toContainText("HX-K-4471");
  const downloading = page.waitForEvent("download");
  await page
    .getByRole("listitem")
    .filter({ hasText: "OB-2218" })
    .getByRole("link", { name: /Download/ })
    .click();
  const text = await pdfText(await downloading);
  for (const part of [
    "OB-2218",
    "Oakes & Bellamy Glass",
    "Simple acceptance",
    "No tolerance defined",
    "NTL-26-10431",
    "page 1 of",
    "In our opinion",
  ])
    expect(text).toContain(part);

  await page.context().clearCookies();
  await signInAs("signatory");
  await page.goto(`/review/${run.replace("2026", String(new Date().getUTCFullYear()))}`);
  const cells = await page
    .getByRole("row", { name: /OB-2218/ })
    .getByRole("link", { name: /±/ })
    .allInnerTexts();
  expect(cells).toHaveLength(5);
  for (const cell of cells) {
    const [error = "", expanded = ""] = cell
      .replace(/\s+/g, " ")
      .split("±")
      .map((part) => part.trim());
    expect(text, `error ${error} of the screen`).toContain(` ${error} `);
    expect(text, `U ${expanded} of the screen`).toContain(` ${expanded} `);
  }
});

test("several certificates come together, and another's address answers not found", async ({
  page,
  signInAs,
}) => {
  await signInAs("Brandt");
  await page.goto("/portal/certificates");
  const href = await page
    .getByRole("link", { name: /Download C-/ })
    .first()
    .getAttribute("href");
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: /together/ }).click();
  expect((await downloading).suggestedFilename()).toMatch(/\.zip$/);

  await page.context().clearCookies();
  await signInAs("Oakes");
  expect((await page.request.get(href ?? "")).status()).toBe(404);
  expect((await page.request.get("/review")).url()).not.toContain("/review");
});

test("the chain of a number ends in the SI, and the log verifies", async ({ page, signInAs }) => {
  await signInAs("quality-manager");
  const main = page.getByRole("main");
  await page.goto("/trace");
  await main
    .getByRole("link", { name: /^C-\d{4}-0001$/ })
    .first()
    .click();
  await expect(main).toContainText("Reaches the SI");
  for (const certificate of ["NTL-26-10431", "NTL-26-10432", "CE-2207", "HV-INT-018", "HV-INT-021"])
    await expect(main).toContainText(certificate);
  await page.goto("/audit");
  await expect(main).toContainText("Verifies");
  await expect(main).toContainText("Odile Marchetti signed off certificate");
});
