import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "@playwright/test";
import { expect, test } from "../fixtures";
import { openWhatMustBe } from "../open-what-must-be";
import { pdfText } from "../pdf";
import { giveSignature, pressSignOff } from "../press-sign-off";
import type { SignIn } from "../sign-in";

/** Last of the journeys, since it ends certificates: one is amended, the amendment is withdrawn, and its customer sees both and is told. */

const letters = (): string =>
  readdirSync(process.env.E2E_MAIL_FOLDER ?? "")
    .filter((name) => name.endsWith(".eml"))
    .map((name) => readFileSync(path.join(process.env.E2E_MAIL_FOLDER ?? "", name), "utf8"))
    .join("\n")
    .replace(/=\r?\n/g, "");

/** Signed out, and in again as somebody else. */
const leaving =
  (page: Page, signInAs: (role: string) => Promise<SignIn>) =>
  async (next: string): Promise<SignIn> => {
    await page.context().clearCookies();
    return signInAs(next);
  };

test("a certificate is amended by two people, then withdrawn, and its customer sees it", async ({
  page,
  signInAs,
}) => {
  const main = page.getByRole("main");
  const leave = leaving(page, signInAs);

  await signInAs("quality");
  await page.goto("/certificates");
  // The newest: other journeys look at the first ones.
  const old =
    (await page
      .getByRole("row")
      .filter({ hasText: "Brandt" })
      .filter({ hasText: "Valid" })
      .getByRole("link", { name: /^C-/ })
      .first()
      .textContent()) ?? "";
  await page.goto(`/certificates/${old}`);
  await page.getByText("Ask for an amendment or a replacement").click();
  const asking = page.getByRole("form", { name: "Ask for another certificate" });
  await asking.getByLabel("Reason").fill("The purchase order was typed wrongly at intake (invented).");
  await asking.getByRole("button", { name: "Ask for it" }).click();
  await expect(main).toContainText("An amendment corrects something");
  await asking.getByLabel("Purchase order").fill("PO-AMENDED-7");
  await asking.getByRole("button", { name: "Ask for it" }).click();
  await expect(main).toContainText("Asked for, not decided");
  await expect(main).toContainText("A signatory decides here.");

  await leave("signatory");
  await page.goto(`/certificates/${old}`);
  const draft = await page.request.get(
    (await page.getByRole("link", { name: "Open the draft" }).getAttribute("href")) ?? "",
  );
  expect(draft.headers()["content-type"]).toContain("application/pdf");
  await giveSignature(page);
  await page.getByRole("button", { name: "Sign off the new certificate" }).click();
  await expect(main).toContainText(`Amends ${old}`);
  const number = /C-\d{4}-\d{4}/.exec(page.url())?.[0] ?? "";
  expect(number).not.toBe(old);
  const downloading = page.waitForEvent("download");
  await page.getByRole("link", { name: "Download PDF" }).click();
  const text = await pdfText(await downloading);
  for (const said of [number, old, "now “PO-AMENDED-7”", "typed wrongly at intake"])
    expect(text).toContain(said);
  await page.goto(`/certificates/${old}`);
  await expect(main).toContainText(`${number} counts instead of ${old}`);

  await page.goto(`/certificates/${number}`);
  await page.getByText("Withdraw this certificate").click();
  await page
    .getByRole("form", { name: "Withdraw" })
    .getByLabel("Why its results are not to be used")
    .fill("Another sensor stood at its place in the furnace (invented).");
  await page.getByRole("button", { name: `Withdraw ${number}` }).click();
  await expect(main).toContainText("Tick that you withdraw it for good");
  await page.getByLabel(`I withdraw ${number} for good`).check();
  await page.getByRole("button", { name: `Withdraw ${number}` }).click();
  await expect(main).toContainText("Caution: withdrawn");

  await leave("Brandt");
  await page.goto("/portal/certificates");
  const rowOf = (certificate: string) =>
    page.getByRole("listitem").filter({ has: page.locator(`#choose-${certificate}`) });
  await expect(rowOf(old)).toContainText(`${old} is amended by ${number}`);
  await expect(rowOf(number)).toContainText(`${number} is withdrawn`);
  await expect(rowOf(number)).toContainText(`It counts instead of ${old}`);
  const link = (await rowOf(old).getByRole("link", { name: /PDF/ }).getAttribute("href")) ?? "";
  const file = await page.request.get(link);
  expect(file.headers()["certificate-standing"]).toBe(`amended; successor=${number}`);
  await expect.poll(letters).toContain("was withdrawn");
  expect(letters()).toContain("A corrected certificate for your order");
});

test("a certificate is replaced after its run was evaluated again, and each new result was opened first", async ({
  page,
  signInAs,
}) => {
  const main = page.getByRole("main");
  const leave = leaving(page, signInAs);
  const run = "R-2026-0001";

  await signInAs("signatory");
  await page.goto(`/review/${run}`);
  if ((await main.getByText("Waiting for review").count()) > 0) {
    await pressSignOff(page);
    await expect(main).toContainText("Signed off");
  }
  const old = (await main.getByRole("link", { name: /^C-\d/ }).last().textContent()) ?? "";

  await leave("quality");
  await page.goto(`/certificates/${old}`);
  await expect(main).toContainText("Valid");
  await page.getByText("Ask for an amendment or a replacement").click();
  const asking = page.getByRole("form", { name: "Ask for another certificate" });
  await asking.getByLabel(/^Replacement/).check();
  await asking.getByLabel("Reason").fill("A window began before the furnace had settled (invented).");
  await asking.getByRole("button", { name: "Ask for it" }).click();
  await expect(main).toContainText("was not evaluated again since this certificate");

  await leave("technician");
  await page.goto(`/certificates/${old}`);
  await page.getByRole("link", { name: "Its windows and states" }).click();
  const first = page.locator("#setpoint-1");
  await first.getByText("Move the window").click();
  const from = first.getByLabel("From");
  await from.fill(String(Number(await from.inputValue()) + 200));
  await first.getByRole("button", { name: "Judge and accept" }).click();
  await expect(first).toContainText("Window moved and accepted.");
  await page.goto(`/certificates/${old}`);
  await page.getByRole("button", { name: `Evaluate run ${run} again` }).click();
  await expect(main).toContainText("Results then and now");

  await leave("signatory");
  await page.goto(`/certificates/${old}`);
  await expect(main).toContainText("It is signed here once each new result was opened by you.");
  await page.goto(`/review/${run}`);
  await expect(main).toContainText(old);
  await openWhatMustBe(page);
  await page.getByRole("link", { name: `${old}, sign there` }).click();
  await giveSignature(page);
  await page.getByRole("button", { name: "Sign off the new certificate" }).click();
  await expect(main).toContainText(`Replaces ${old}`);
  const number = /C-\d{4}-\d{4}/.exec(page.url())?.[0] ?? "";
  await page.goto(`/certificates/${old}`);
  await expect(main).toContainText(`${number} counts instead of ${old}`);
});
