import { readFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "@playwright/test";
import { violations } from "../axe";
import { expect, test } from "../fixtures";

const file = readFileSync(
  path.resolve(import.meta.dirname, "../../prisma/seed/reference-certificate.dcc.xml"),
  "utf8",
);
const upload = (text: string) => ({
  name: "NTL-26-11207.dcc.xml",
  mimeType: "application/xml",
  buffer: Buffer.from(text),
});

const openStandard = async (page: Page): Promise<void> => {
  await page.goto("/standards");
  await page.getByRole("link", { name: "REF-R-01" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("REF-R-01");
};

test("a calibration comes in from a digital certificate, is accepted by another person, and is chosen for a run", async ({
  page,
  signInAs,
}) => {
  const main = page.getByRole("main");
  const heading = page.getByRole("heading", { level: 1 });
  const leave = async (role: string) => {
    await page.context().clearCookies();
    await signInAs(role);
  };

  // Its certificate has run out: it is not offered, and the page says why.
  await signInAs("technician");
  await page.goto("/runs/new");
  const notOffered = page.getByRole("table", { name: "Equipment that is not offered" });
  await expect(notOffered.getByRole("row", { name: /REF-R-01/ })).toContainText("was due on");
  await expect(main.getByRole("checkbox", { name: /REF-R-01/ })).toHaveCount(0);

  // The certificate that came, with a list cut short on the way: refused, with the place.
  await leave("quality-manager");
  await openStandard(page);
  await page.getByRole("link", { name: "Record a certificate" }).click();
  await page.getByRole("link", { name: "Read a digital certificate" }).click();
  const chooser = page.getByLabel("The certificate’s XML file");
  await chooser.setInputFiles(upload(file.replace("-1.1 -2.0 -3.2", "-1.1 -2.0")));
  await page.getByRole("button", { name: "Read it" }).click();
  await expect(main).toContainText("The file was refused");
  await expect(page.getByRole("list", { name: "Problems in the file" })).toContainText(
    /Line \d+, \/digitalCalibrationCertificate\/.*list/,
  );

  // Whole: what it says is laid beside the form.
  await chooser.setInputFiles(upload(file));
  await page.getByRole("button", { name: "Read it" }).click();
  await expect(heading).toContainText("Record a certificate of REF-R-01");
  // Whether the published schemas are set up where this runs is not ours to say; that the page says which, is.
  await expect(main).toContainText(/Held against (our own rules only|the published schema 3\.3\.0)/);
  await expect(page.getByLabel("Certificate number")).toHaveValue("NTL-26-11207");
  await expect(page.getByLabel("Serial number on the certificate")).toHaveValue("EM-R-1107");
  await expect(page.getByLabel("Deviation of point 1, µV")).toHaveValue("-1.1");
  expect(await violations(page)).toEqual([]);

  // Another value is marked at once, and asks why; the server does not take it without.
  await page.getByLabel("Due again on").fill("2028-09-16");
  await page.getByLabel("Deviation of point 1, µV").fill("-1.3");
  await expect(main).toContainText("Differs from the file");
  await page.getByRole("button", { name: "Record the certificate" }).click();
  await expect(main).toContainText("Some values differ from the digital certificate. Nothing was stored.");
  await expect(main).toContainText(/the file says .*-1\.1.*you confirm -1\.3/);
  await page.getByLabel("Deviation of point 1, µV").fill("-1.1");
  await page.getByRole("button", { name: "Record the certificate" }).click();
  await expect(heading).toHaveText(/Certificate NTL-26-11207/);
  const here = page.url();
  await expect(main).toContainText("Waits for acceptance");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "NTL-26-11207.dcc.xml" }).click(),
  ]);
  expect(readFileSync(await download.path(), "utf8")).toBe(file);

  // Who recorded it does not accept it: it is not offered, and the operation would refuse it.
  await expect(main).toContainText(
    "You recorded this certificate yourself: another person has to accept it.",
  );
  await expect(page.getByRole("button", { name: "Record the decision" })).toHaveCount(0);

  // Another person looks at every answer first.
  const confirmAll = async () => {
    for (const box of await page.getByRole("checkbox").all()) await box.check();
    await page.getByRole("radio", { name: /^Accept/ }).check();
    await page.getByRole("button", { name: "Record the decision" }).click();
  };
  await leave("signatory");
  await page.goto(here);
  await page.getByRole("radio", { name: /^Accept/ }).check();
  await page.getByRole("button", { name: "Record the decision" }).click();
  await expect(main).toContainText("Look at the certificate, then confirm this");
  expect(await violations(page)).toEqual([]);
  await confirmAll();
  await expect(main).toContainText("The decision is recorded.");
  await openStandard(page);
  await expect(page.getByRole("row", { name: /NTL-26-11207/ })).toContainText("In force");

  // From now on a run may stand on it.
  await leave("technician");
  await page.goto("/runs/new");
  await main.getByRole("checkbox", { name: /REF-R-01/ }).check();
});
