import { acceptOrder } from "../accept-order";
import { expect, test } from "../fixtures";
import { mailedLink } from "../mailed-link";

const today = () => new Date().toISOString().slice(0, 10);

test("a bent sensor waits, the customer answers by the link of the mail and insists, and it goes on with a disclaimer", async ({
  page,
  signInAs,
  browser,
}) => {
  await signInAs("front-desk");
  const main = page.getByRole("main");
  await page.goto("/orders/new");
  await page.getByLabel("Customer", { exact: true }).selectOption({ label: "Oakes & Bellamy Glass" });
  await page.getByLabel("How many").fill("2");
  await page.getByLabel("Construction").fill("Mineral-insulated, 3 mm");
  await page.getByLabel("Setpoints (may stay empty)").fill("300 500");
  await page.getByRole("button", { name: "Record the order" }).click();
  const heading = page.getByRole("heading", { level: 1 });
  await expect(heading).toContainText(/O-\d{4}-\d{4}/);
  const number = /O-\d{4}-\d{4}/.exec((await heading.textContent()) ?? "")?.[0] ?? "";
  await acceptOrder(page);
  await page.goto(`/orders/${number}/receive`);
  await page.getByLabel("Serial numbers").fill("HOLD-1\nHOLD-2");
  await page.getByRole("button", { name: "Take them in" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/receive"));

  // One of them turns out to be bent: it is put on hold with a question.
  await page.goto(`/orders/${number}`);
  await main
    .getByRole("link", { name: /^T-\d+/ })
    .first()
    .click();
  await expect(heading).toContainText("Sensor T-");
  const tag = /T-\d+/.exec((await heading.textContent()) ?? "")?.[0] ?? "";
  await page.getByText("Put this sensor on hold").click();
  await page.getByLabel("What is the matter").fill("sheath bent near the tip");
  await page.getByLabel("Question to the customer").fill("The sheath came bent. How shall we go on?");
  const answers = page.getByLabel(/^Answers offered/);
  await answers.fill("Measure it as it is\nMeasure it as it is");
  await page.getByRole("button", { name: `Put ${tag} on hold` }).click();
  await expect(main).toContainText("Two answers are the same.");
  await answers.fill("Measure it as it is\nReturn it unmeasured");
  await page.getByRole("button", { name: `Put ${tag} on hold` }).click();
  await expect(main).toContainText("On hold, waiting for the customer");
  await page.goto("/holds?show=waiting");
  await expect(main.getByRole("link", { name: tag })).toBeVisible();

  // The customer, without an account, from the mail.
  const link = await mailedLink(number, "answer");
  const customer = await (await browser.newContext()).newPage();
  await customer.goto(new URL(link, page.url()).href);
  await expect(customer.getByRole("main")).toContainText("The sheath came bent. How shall we go on?");
  await expect(customer.getByRole("main")).toContainText(/HOLD-\d/);
  await customer.getByRole("button", { name: "Send the answer" }).click();
  await expect(customer.getByRole("main")).toContainText("Write the name of whoever answers");
  await customer.getByLabel("Measure it as it is").check();
  await customer.getByLabel("Your name").fill("Teodor Lisowski");
  await customer.getByRole("button", { name: "Send the answer" }).click();
  await expect(customer.getByRole("heading", { level: 1 })).toHaveText("Thank you");
  await customer.goto(new URL(link, page.url()).href);
  await expect(customer.getByRole("main")).toContainText("There is nothing to answer here any more");
  await customer.context().close();

  // The laboratory ends the hold; since they insist, "as ordered" is not offered, and the certificate will say so.
  await page.goto(`/sensors/${tag}`);
  await expect(main).toContainText("Teodor Lisowski");
  await expect(main).toContainText("The customer insists");
  await page.getByText("End the hold").first().click();
  await expect(page.getByLabel("Go on as ordered")).toHaveCount(0);
  const disclaimer = page.getByLabel(/^Disclaimer on the certificate/);
  await expect(disclaimer).toHaveValue(new RegExp(`sheath bent near the tip.*asked on ${today()}`));
  await page.getByRole("button", { name: "End the hold" }).click();
  await expect(main).toContainText("The certificate says: The condition of the item was not as described");

  // Its custody, with a move to a shelf by its label.
  await page.getByText("Record where it went").first().click();
  await page.getByLabel("Storage place").selectOption({ label: "S-01 Incoming shelf" });
  await page.getByRole("button", { name: "Record where it went" }).click();
  await expect(main).toContainText("Now in S-01 Incoming shelf.");
});

test("a finding is reported from the order it was found on, stops its work, and is closed by somebody else", async ({
  page,
  signInAs,
}) => {
  await signInAs("technician");
  const main = page.getByRole("main");
  await page.goto("/sensors");
  await main
    .getByRole("link", { name: /^T-\d+/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Sensor T-");
  const tag = /T-\d+/.exec((await page.getByRole("heading", { level: 1 }).textContent()) ?? "")?.[0] ?? "";
  await page.getByRole("link", { name: "Report nonconforming work" }).click();
  await expect(page.getByLabel(/^Its number, tag or name/)).toHaveValue(tag);
  await page.getByLabel("In one line").fill("Label on the wrong sensor");
  await page.getByLabel("What was found").fill("Two labels were swapped at the bench.");
  await page.getByRole("button", { name: "Report it" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(
    /N-\d{4}-\d{4} Label on the wrong sensor/,
  );
  const address = page.url();
  await page.context().clearCookies();

  await signInAs("signatory");
  const step = async (summary: string, words: string, field = "Words", choose?: string) => {
    await page.goto(address);
    await page.getByText(summary, { exact: true }).first().click();
    const form = page.getByRole("form", { name: summary });
    if (choose) await form.getByLabel(choose, { exact: true }).check();
    await form.getByLabel(field).fill(words);
    await form.getByRole("button", { name: summary }).click();
    await expect(main).toContainText(words);
  };
  await step("State the effect on results", "None: found before loading.", "What it did to results");
  for (const [kind, words] of [
    ["Correction", "Labels put right."],
    ["Cause", "Both lay loose on the bench."],
    ["Corrective action", "Labels are tied on at receipt."],
  ] as const)
    await step("Record a step", words, "Words", kind);
  await page.goto(address);
  await expect(page.getByRole("button", { name: "Close it" })).toHaveCount(0);
  await expect(main).toContainText("It is closed by somebody else");
  await page.context().clearCookies();

  await signInAs("quality-manager");
  await step("Close it", "Looked at both sensors.", "What you looked at");
  await page.goto("/quality?state=closed&kind=all");
  await expect(main).toContainText("Label on the wrong sensor");
});
