import { writeFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { violations } from "../axe";
import { type Issued, issuedCertificates, withEndings } from "../certificate-ending";
import { expect, test } from "../fixtures";

// Whoever holds a certificate has no account: nobody signs in here.

const pdf = (name: string, file: Buffer) => ({ name, mimeType: "application/pdf", buffer: file });

const flipped = (file: Buffer): Buffer => {
  const copy = Buffer.from(file);
  copy[Math.floor(copy.length / 3)] = (copy[Math.floor(copy.length / 3)] ?? 0) ^ 1;
  return copy;
};

const choose = (page: Page, name: string, file: Buffer) =>
  page.getByLabel(/Drop the certificate/).setInputFiles(pdf(name, file));

const verdict = (page: Page) => page.getByRole("region", { name: "Verdict on the file" });

/** As a hand would: the file lands on the frame. */
const drop = async (page: Page, { number, file }: Issued): Promise<void> => {
  const data = await page.evaluateHandle(
    ([name, base64]) => {
      const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
      const carried = new DataTransfer();
      carried.items.add(new File([bytes], `${name}.pdf`, { type: "application/pdf" }));
      return carried;
    },
    [number, file.toString("base64")] as const,
  );
  await page.locator(".drop").dispatchEvent("drop", { dataTransfer: data });
};

test("a good file passes, and a changed one, another one and other paper do not", async ({
  page,
  context,
}) => {
  const [one, other] = await issuedCertificates(2);
  if (!one || !other) throw new Error("two documents");
  const sent: string[] = [];
  page.on("request", (request) =>
    sent.push(`${request.method()} ${request.url()} ${request.postData() ?? ""}`),
  );
  let workers = 0;
  page.on("worker", () => {
    workers += 1;
  });
  await page.goto(`/authenticity/${one.token}#${one.contentHash}`);
  const main = page.getByRole("main");
  await expect(main).toContainText(`issued ${one.number} on`);
  await expect(main).toContainText("The code on your paper belongs to this certificate");

  await drop(page, one);
  await expect(verdict(page)).toContainText("Genuine, unchanged and in force");
  await expect(verdict(page)).toContainText("TOTAL-PASSED");
  // Beside the page, which goes on answering.
  expect(workers).toBe(1);
  await expect(verdict(page)).toContainText("Byte for byte the file that the laboratory keeps");
  await expect(verdict(page)).toContainText("The log still holds what it held when this was signed");
  expect(await violations(page)).toEqual([]);

  await choose(page, "changed.pdf", flipped(one.file));
  await expect(verdict(page)).toContainText("Do not rely on this file");
  await choose(page, "longer.pdf", Buffer.concat([one.file, Buffer.from("\n")]));
  await expect(verdict(page)).toContainText("longer.pdf");
  await expect(verdict(page)).toContainText("Do not rely on this file");
  await choose(page, "other.pdf", other.file);
  await expect(verdict(page)).toContainText("This is another document");

  await page.goto(`/authenticity/${one.token}#${other.contentHash}`);
  await expect(main).toContainText("this is not the paper that was signed");
  // The danger first; what is said of the certificate is not said of this paper.
  await expect(main.locator(".notice ~ .standing")).toContainText(`${one.number} itself: valid`);
  await choose(page, "one.pdf", one.file);
  await expect(verdict(page)).toContainText("Paper and file do not belong together");
  await page.goto(`/authenticity/${one.token}#${one.contentHash.slice(0, 30)}`);
  await expect(main).toContainText("the code on your paper was not read whole");

  // Neither the hash on paper nor a byte of a file went anywhere, and nothing was left behind.
  expect(sent.filter((request) => !request.startsWith("GET "))).toEqual([]);
  expect(sent.filter((request) => request.includes(one.contentHash.slice(0, 30)))).toEqual([]);
  expect(await context.cookies()).toEqual([]);
});

test("replaced, withdrawn and unknown are told, and unknown looks like known from outside", async ({
  page,
  baseURL,
}) => {
  const [one, next] = await issuedCertificates(2);
  if (!one || !next) throw new Error("two documents");
  const main = page.getByRole("main");
  const unknown = "A".repeat(43);
  await withEndings([{ number: one.number, kind: "replaced", successor: next.number }], async () => {
    // Without the code: the file alone says where to ask.
    await page.goto("/authenticity");
    await choose(page, "one.pdf", one.file);
    await expect(verdict(page)).toContainText("Genuine, but replaced");
    await page.goto(`/authenticity/${one.token}`);
    await expect(main).toContainText(`${next.number} now counts in its place`);
    await expect(main).toContainText("the paper itself was not compared");
    await main.getByRole("link", { name: next.number }).click();
    await expect(page).toHaveURL(new RegExp(next.token));
    await expect(main).toContainText("it stands as it was issued");
    await expect(main.getByRole("link", { name: one.number })).toBeVisible();
  });
  await withEndings([{ number: one.number, kind: "withdrawn" }], async () => {
    await page.goto(`/authenticity/${one.token}`);
    await expect(main).toContainText(`withdrew ${one.number}`);
    await expect(main).not.toContainText("a journey");
  });
  await page.goto(`/authenticity/${unknown}`);
  await expect(main).toContainText("has issued nothing under this address");
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await violations(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);

  // Asked from another address, so that this journey does not use up its own thirty.
  const ask = async (path: string) => {
    const answer = await fetch(`${baseURL}${path}`, { headers: { "x-forwarded-for": "192.0.2.1" } });
    const headers = ["cache-control", "referrer-policy", "x-robots-tag", "set-cookie", "content-type"];
    return {
      status: answer.status,
      length: (await answer.arrayBuffer()).byteLength,
      headers: headers.map((name) => answer.headers.get(name)),
    };
  };
  const known = await ask(`/authenticity/${one.token}`);
  expect(known).toMatchObject({
    status: 200,
    headers: [
      ...["private, no-store, no-transform", "no-referrer", "noindex, nofollow", null],
      "text/html; charset=utf-8",
    ],
  });
  expect(await ask(`/authenticity/${unknown}`)).toEqual(known);
  const malformed = await ask("/authenticity/C-2026-0001");
  expect(malformed).toMatchObject({ status: known.status, headers: known.headers });
  const data = await ask(`/api/authenticity/${one.token}`);
  for (const token of [unknown, "C-2026-0001", `${one.token}x`, one.token.slice(1)])
    expect(await ask(`/api/authenticity/${token}`)).toEqual(data);
  const asked = await Promise.all(Array.from({ length: 31 }, () => ask(`/api/authenticity/${unknown}`)));
  expect(asked.map(({ status }) => status)).toContain(429);
});

test("the keys are published, and the check works from a file without a network", async ({
  browser,
  baseURL,
}, testInfo) => {
  const [one] = await issuedCertificates(1);
  if (!one) throw new Error("a document");
  const keys = await fetch(`${baseURL}/.well-known/seal-keys.json`);
  expect(keys.headers.get("access-control-allow-origin")).toBe("*");
  expect(keys.headers.get("cache-control")).toBe("public, max-age=300");
  expect(await keys.json()).toMatchObject({ format: "emfolio-key-list" });

  const kept = testInfo.outputPath("check.html");
  writeFileSync(kept, await (await fetch(`${baseURL}/authenticity/keep`)).text());
  const offline = await browser.newContext({ offline: true, viewport: { width: 390, height: 844 } });
  const page = await offline.newPage();
  const told: string[] = [];
  page.on("console", (message) => message.type() === "error" && told.push(message.text()));
  page.on("pageerror", (error) => told.push(error.message));
  await page.goto(`file://${kept}`);
  await expect(page.getByRole("main")).toContainText("cannot be known offline");
  await choose(page, "one.pdf", one.file);
  await expect(verdict(page)).toContainText("Genuine and unchanged");
  await page.getByLabel(/Address or hash/).fill(`${baseURL}/authenticity/${one.token}#${"0".repeat(64)}`);
  await page.getByLabel(/Address or hash/).blur();
  await expect(verdict(page)).toContainText("Paper and file do not belong together");
  await page.getByLabel(/Address or hash/).fill("");
  await choose(page, "changed.pdf", flipped(one.file));
  await expect(verdict(page)).toContainText("Do not rely on this file");
  expect(told).toEqual([]);
  await offline.close();
});
