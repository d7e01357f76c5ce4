import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "../fixtures";
import { freshCode } from "../one-time-code";
import { pdfText } from "../pdf";

/** Last of the journeys, since it ends certificates: one is amended, the amendment is withdrawn, and its customer sees both and is told. */

const letters = (): string =>
  readdirSync(process.env.E2E_MAIL_FOLDER ?? "")
    .filter((name) => name.endsWith(".eml"))
    .map((name) => readFileSync(path.join(process.env.E2E_MAIL_FOLDER ?? "", name), "utf8"))
    .join("\n")
    .replace(/=\r?\n/g, "");

test("a certificate is amended by two people, then withdrawn, and its customer sees it", async ({
  page,
  signInAs,
}) => {
  const main = page.getByRole("main");
  const leave = async (next: string) => {
    await page.context().clearCookies();
    return signInAs(next);
  };

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

  const signatory = await leave("signatory");
  await page.goto(`/certificates/${old}`);
  const draft = await page.request.get(
    (await page.getByRole("link", { name: "Open the draft" }).getAttribute("href")) ?? "",
  );
  expect(draft.headers()["content-type"]).toContain("application/pdf");
  await page.getByLabel("Your password").fill(signatory.password);
  await page
    .getByLabel("A one-time code")
    .fill(await freshCode({ email: signatory.email, codeKey: signatory.codeKey ?? "" }));
  await page.getByRole("button", { name: "Sign off the new certificate" }).click();
  await expect(main).toContainText(`Amends ${old}`);
  const number = /C-\d{4}-\d{4}/.exec(page.url())?.[0] ?? "";
  expect(number).not.toBe(old);
  const downloading = page.waitForEvent("download");
  await page.getByRole("link", { name: "Download PDF" }).click();
  const text = await pdfText(await downloading);
  for (const said of [number, old, "PO-AMENDED-7", "typed wrongly at intake"]) expect(text).toContain(said);
  await page.goto(`/certificates/${old}`);
  await expect(main).toContainText(`${number} counts instead of ${old}`);

  await page.goto(`/certificates/${number}`);
  await page.getByText("Withdraw this certificate").click();
  await page
    .getByRole("form", { name: "Withdraw" })
    .getByLabel("Why its results are not to be used")
    .fill("Another sensor stood at its place in the furnace (invented).");
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
  await expect.poll(letters, { timeout: 30_000 }).toContain("was withdrawn");
  expect(letters()).toContain("A corrected certificate for your order");
});
