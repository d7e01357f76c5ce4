import { readFile } from "node:fs/promises";
import type { Browser, Page } from "@playwright/test";
import { issuedCertificates } from "../certificate-ending";
import { expect, test } from "../fixtures";
import { giveSignature } from "../press-sign-off";

/** After every other journey: from here on what the laboratory sealed before is not trusted. */

/** Dropped by somebody who was never here before: no list of keys is remembered from an earlier check. */
const checked = async (browser: Browser, baseURL: string | undefined, buffer: Buffer, said: RegExp) => {
  const context = await browser.newContext({ ...(baseURL ? { baseURL } : {}) });
  const page = await context.newPage();
  await page.goto("/authenticity");
  await page
    .getByLabel(/Drop the certificate/)
    .setInputFiles({ name: "certificate.pdf", mimeType: "application/pdf", buffer });
  const verdict = page.getByRole("region", { name: "Verdict on the file" });
  await expect(verdict).toContainText(said);
  const text = (await verdict.textContent()) ?? "";
  await context.close();
  return text;
};

const sealingKey = (page: Page) =>
  page.getByRole("row").filter({ hasText: "Seals certificates" }).filter({ hasText: "In force" });

/** Words of one are corrected: the quickest way to another document of this laboratory. */
const amend = async (page: Page, number: string, signInAs: (role: string) => Promise<unknown>) => {
  await page.goto(`/certificates/${number}`);
  await page.getByText("Ask for an amendment or a replacement").click();
  const asking = page.getByRole("form", { name: "Ask for another certificate" });
  await asking.getByLabel("Reason").fill("The purchase order was misread (invented).");
  await asking.getByLabel("Purchase order").fill("PO-NEW-KEY");
  await asking.getByRole("button", { name: "Ask for it" }).click();
  await expect(page.getByRole("main")).toContainText("Asked for, not decided");
  await page.context().clearCookies();
  await signInAs("signatory");
  await page.goto(`/certificates/${number}`);
  await giveSignature(page);
  await page.getByRole("button", { name: "Sign off the new certificate" }).click();
  await expect(page.getByRole("main")).toContainText(`Amends ${number}`);
  const downloading = page.waitForEvent("download");
  await page.getByRole("link", { name: "Download PDF" }).click();
  return readFile(await (await downloading).path());
};

test("a key is retired, the next document carries another, and the old one is revoked", async ({
  page,
  browser,
  baseURL,
  signInAs,
}) => {
  const [older, amended] = await issuedCertificates(2);
  if (!older || !amended) throw new Error("two documents");
  await signInAs("quality");
  await page.goto("/laboratory/seal");
  const fingerprint = (await sealingKey(page).locator("details.hash code").textContent()) ?? "";
  expect(fingerprint).toMatch(/^[0-9a-f]{64}$/);
  const oldKey = page.getByRole("row").filter({ hasText: fingerprint });
  await oldKey.getByText("Retire", { exact: true }).click();
  const retiring = page.getByRole("form", { name: /^Retire / });
  await retiring.getByLabel("Why").fill("Changed once a year (invented).");
  await retiring.getByRole("button", { name: "Retire the key" }).click();
  await expect(oldKey).toContainText("Retired");
  await expect(sealingKey(page)).toHaveCount(0);

  const newer = await amend(page, amended.number, signInAs);
  await page.context().clearCookies();
  await signInAs("quality");
  await page.goto("/laboratory/seal");
  const newKey = (await sealingKey(page).locator("details.hash code").textContent()) ?? "";
  expect(newKey).not.toBe(fingerprint);
  const passes = /TOTAL-PASSED/;
  expect(await checked(browser, baseURL, older.file, passes)).toContain(fingerprint);
  expect(await checked(browser, baseURL, newer, passes)).toContain(newKey);

  await oldKey.getByText("Revoke", { exact: true }).click();
  const revoking = page.getByRole("form", { name: /^Revoke / });
  await revoking.getByLabel("Why").fill("Found on a laptop that was stolen (invented).");
  await revoking.getByLabel("Not to be trusted from").fill("yesterday");
  await revoking.getByRole("button", { name: "Revoke the key" }).click();
  await expect(revoking).toContainText("Say from when, as a date and a time.");
  const yesterday = new Date(Date.now() - 86_400_000).toISOString().slice(0, 16).replace("T", " ");
  await revoking.getByLabel("Why").fill("Found on a laptop that was stolen (invented).");
  await revoking.getByLabel("Not to be trusted from").fill(yesterday);
  await revoking.getByRole("button", { name: "Revoke the key" }).click();
  await expect(oldKey).toContainText("Revoked");

  // Its timestamp says that it was sealed after the key was lost; the new key's document is as good as before.
  const told = await checked(browser, baseURL, older.file, /TOTAL-FAILED/);
  for (const said of ["Do not rely on this file", "Found on a laptop", "the seal was made after that"])
    expect(told).toContain(said);
  await checked(browser, baseURL, newer, passes);
});
