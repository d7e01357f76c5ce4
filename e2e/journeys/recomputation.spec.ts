import { readFile, writeFile } from "node:fs/promises";
import type { Download, Page } from "@playwright/test";
import { violations } from "../axe";
import { expect, test } from "../fixtures";

const bytesOf = async (download: Download): Promise<Buffer> => readFile(await download.path());

/** A document of the customer's and its evidence, fetched as the customer fetches them. */
const fetchBoth = async (page: Page) => {
  await page.goto("/portal/certificates");
  const item = page
    .getByRole("listitem")
    .filter({ hasText: /Download C-/ })
    .first();
  const fetched = async (name: RegExp): Promise<Buffer> => {
    const downloading = page.waitForEvent("download");
    await item.getByRole("link", { name }).click();
    return bytesOf(await downloading);
  };
  return { document: await fetched(/\(PDF\)/), evidence: await fetched(/evidence/) };
};

const chooseEvidence = (page: Page, evidence: Buffer | object) =>
  page.getByLabel(/The evidence file/).setInputFiles({
    name: "evidence.json",
    mimeType: "application/json",
    buffer: Buffer.isBuffer(evidence) ? evidence : Buffer.from(JSON.stringify(evidence)),
  });

test("every printed number is computed again from the customer's evidence, and a changed reading is found", async ({
  page,
  context,
  baseURL,
  signInAs,
}, testInfo) => {
  await signInAs("Brandt");
  const { document, evidence } = await fetchBoth(page);
  // Whoever checks has no account.
  await context.clearCookies();
  const sent: string[] = [];
  page.on("request", (request) => sent.push(request.method()));
  await page.goto("/authenticity");
  await page
    .getByLabel(/Drop the certificate/)
    .setInputFiles({ name: "certificate.pdf", mimeType: "application/pdf", buffer: document });
  await expect(page.getByRole("region", { name: "Verdict on the file" })).toContainText("TOTAL-PASSED");

  const numbers = page.getByRole("region", { name: "Verdict on the numbers" });
  const file = JSON.parse(evidence.toString());
  await chooseEvidence(page, evidence);
  await expect(numbers).toContainText("It is the evidence that was sealed with this certificate.");
  await expect(numbers).toContainText(/All \d+ printed figures come out again/);
  await expect(page.getByRole("table", { name: "What was compared" })).toContainText("Results");
  expect(await violations(page)).toEqual([]);

  // Fifty microvolts in one sensor's readings: other figures, and not the readings that the laboratory recorded.
  const changed = structuredClone(file);
  const { evidence: run, items } = changed.parts[0];
  const place = run.load.find((one: { item: { id?: string } }) => one.item.id === items[0].tag);
  for (const channel of run.scans.channels)
    if (channel.channel === place.channel)
      channel.microvolts = channel.microvolts.map((value: number) => value + 50);
  await chooseEvidence(page, changed);
  await expect(numbers).toContainText(/\d+ of \d+ printed figures come out otherwise/);
  await expect(numbers).toContainText("are not those of block 1");
  await expect(page.getByRole("table", { name: /Printed otherwise/ })).toContainText("Error, °C");

  // Every figure comes out again, and yet it is not the file that was sealed: not byte for byte.
  await chooseEvidence(page, file);
  await expect(numbers).toContainText("from another file than the one sealed with them");

  await chooseEvidence(page, { ...file, certificate: "C-2020-0001" });
  await expect(numbers).toContainText("This is the evidence of certificate C-2020-0001");
  await chooseEvidence(page, { format: "something else" });
  await expect(page.getByRole("main")).toContainText(
    "Nothing was computed: the file is no evidence of a certificate",
  );

  // Nothing was uploaded.
  expect(sent.filter((method) => method !== "GET")).toEqual([]);

  // The page to keep does the same, without a network.
  const kept = testInfo.outputPath("check.html");
  await writeFile(kept, await (await fetch(`${baseURL}/authenticity/keep`)).text());
  await context.setOffline(true);
  await page.goto(`file://${kept}`);
  await page
    .getByLabel(/Drop the certificate/)
    .setInputFiles({ name: "certificate.pdf", mimeType: "application/pdf", buffer: document });
  await chooseEvidence(page, changed);
  await expect(numbers).toContainText(/\d+ of \d+ printed figures come out otherwise/);
  await chooseEvidence(page, evidence);
  await expect(numbers).toContainText(/All \d+ printed figures come out again/);
});
