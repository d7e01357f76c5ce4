import type { Page } from "@playwright/test";
import { png } from "@/tests/support/png";
import { expect, test } from "../fixtures";
import { pdfText } from "../pdf";

/** As somebody else: the person before leaves the bench. */
const leave = (page: Page) => page.context().clearCookies();

test("a scope is recorded, drawn and ended; what lies outside is marked on the certificate", async ({
  page,
  signInAs,
}) => {
  await signInAs("quality-manager");
  await page.getByRole("link", { name: "Scope", exact: true }).click();
  await expect(
    page.getByRole("img", { name: /Capability for type K/ }).filter({ visible: true }),
  ).toBeVisible();
  await page.getByRole("link", { name: "Record a line" }).click();
  await page.getByRole("link", { name: "a + b·|t|" }).click();
  await page.getByLabel("Type").selectOption("K");
  await page.getByLabel("From", { exact: true }).fill("900");
  await page.getByLabel("To", { exact: true }).fill("1100");
  await page.getByLabel("a", { exact: true }).fill("0.4");
  await page.getByLabel("b", { exact: true }).fill("0.001");
  await page.getByLabel("In force from").fill("2026-01-01");
  await page.getByLabel("Schedule of accreditation").fill("Invented schedule of this journey");
  await page.getByRole("button", { name: "Record the line" }).click();
  // It reaches into the demonstration's own line, which ends at 1000 °C.
  await expect(page.getByText(/has a line from 200 to 1000 °C/)).toBeVisible();
  await page.getByLabel("From", { exact: true }).fill("1000");
  await page.getByRole("button", { name: "Record the line" }).click();
  const line = page.getByRole("row").filter({ hasText: "Invented schedule of this journey" });
  await expect(line.last()).toContainText("0.4 °C + 0.001 · |t|");
  const own = page.getByRole("table", { name: "Lines of the scope" }).getByRole("row");
  await own.filter({ hasText: "Invented schedule of this journey" }).getByText("End it").click();
  await page.getByRole("button", { name: "End the line" }).click();
  await expect(own.filter({ hasText: "Invented schedule of this journey" })).toContainText(
    / to \d{4}-\d{2}-\d{2}/,
  );

  await page.getByRole("link", { name: "Certificates", exact: true }).click();
  await page.getByRole("link", { name: /^C-\d{4}-0001$/ }).click();
  const results = page.getByRole("table", { name: "Results" });
  await expect(results.getByRole("row").filter({ hasText: "900 °C" })).toContainText("In scope");
  await expect(results.getByRole("row").filter({ hasText: "1100 °C" })).toContainText("† Outside scope");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Download PDF" }).click(),
  ]);
  const text = (await pdfText(download)).replace(/\s+/g, " ");
  expect(text).toContain("1100 °C †");
  expect(text).not.toContain("900 °C †");
  expect(text).toContain("† Outside the laboratory's scope of accreditation");
  expect(text).toContain("Demonstration, not accredited");
});

test("the accreditation mark is taken in as an image, and anything else is refused", async ({
  page,
  signInAs,
}) => {
  await signInAs("quality-manager");
  await page.goto("/laboratory");
  const form = page.getByRole("form", { name: "Accreditation mark" });
  const file = form.getByLabel("Image of the mark");
  await file.setInputFiles({ name: "mark.png", mimeType: "image/png", buffer: Buffer.from("<svg/>") });
  await form.getByRole("button", { name: "Take the mark in" }).click();
  await expect(form.getByText(/neither a PNG nor a JPEG/)).toBeVisible();
  const mark = { name: "mark.png", mimeType: "image/png", buffer: Buffer.from(png(80, 40)) };
  await file.setInputFiles(mark);
  await form.getByRole("button", { name: "Take the mark in" }).click();
  const shown = page.getByRole("img", { name: "The accreditation mark in use" });
  await expect(shown).toBeVisible();
  expect(await shown.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBe(80);
  await form.getByRole("button", { name: "Take it off" }).click();
  await expect(shown).toHaveCount(0);
});

test("a procedure's next revision is written by one person, made current by another, and then followed", async ({
  page,
  signInAs,
}) => {
  await signInAs("quality-manager");
  await page.getByRole("link", { name: "Procedures", exact: true }).click();
  await page.getByRole("link", { name: "Draft of revision 2" }).click();
  const figures = page.getByRole("form", { name: "Figures" });
  await figures.getByLabel("Type K: repeatability: figure").fill("-1");
  await figures.getByRole("button", { name: "Store the figures" }).click();
  await expect(figures.getByText("Not below nought.")).toBeVisible();
  await figures.getByLabel("Type K: repeatability: figure").fill("1.2");
  await figures.getByLabel("Type K: repeatability: source").fill("Ten pooled series (invented)");
  await figures.getByRole("button", { name: "Store the figures" }).click();
  await expect(figures.getByText("The draft is stored.")).toBeVisible();
  const words = page.getByRole("form", { name: "Change and verification" });
  await words.getByLabel("Verification").fill("Ten series of one sensor, pooled (invented).");
  await words.getByRole("button", { name: "Store" }).click();
  await expect(words.getByText("The draft is stored.")).toBeVisible();
  await expect(page.getByText(/You drafted it: another/)).toBeVisible();
  await expect(page.getByRole("button", { name: /Make revision 2 current/ })).toHaveCount(0);

  await leave(page);
  await signInAs("signatory");
  await page.goto("/procedures/tube-furnace/draft");
  await page.getByRole("button", { name: "Make revision 2 current" }).click();
  await expect(page.getByText("Runs made now follow revision 2; earlier runs keep theirs.")).toBeVisible();
  const revisions = page.getByRole("table", { name: /^Revisions of/ }).getByRole("row");
  await expect(revisions.filter({ hasText: "First revision." })).toContainText("Withdrawn");
  await expect(page.getByRole("table", { name: /^Figures of/ })).toContainText("u = 1.2 µV");

  await leave(page);
  await signInAs("technician");
  await page.goto("/procedures/tube-furnace");
  await expect(page.getByRole("button", { name: "Draft the next revision" })).toHaveCount(0);
});
