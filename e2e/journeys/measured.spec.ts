import { readingsFile } from "@/lib/station/simulation/readings-file";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { acceptOrder } from "../accept-order";
import { expect, test } from "../fixtures";
import { passGate } from "../pass-gate";
import { pdfText } from "../pdf";
import { pressSignOff } from "../press-sign-off";

/** The scanner's file of a simulated full run (invented), cut to the channels of this load. */
const scannerFile = (): Buffer => {
  const { evidence } = simulateRun(31);
  const channels = evidence.scans.channels.filter(({ channel }) =>
    ["101", "102", "103", "108", "120"].includes(channel),
  );
  // The furnace began when the gate was passed, as far as its scanner's clock can tell.
  const seconds = Math.max(...channels.flatMap((channel) => channel.seconds));
  const startedAt = new Date(Math.floor(Date.now() / 1000 - seconds) * 1000).toISOString();
  return Buffer.from(readingsFile({ ...evidence, scans: { ...evidence.scans, startedAt, channels } }));
};

const optionLike = (label: RegExp) => (options: string[]) =>
  options.find((option) => label.test(option)) ?? "";

test("two sensors, from the order over six hours of scans, a return and sign-off to the customer's PDF", async ({
  page,
  signInAs,
}) => {
  const main = page.getByRole("main");
  const heading = page.getByRole("heading", { level: 1 });
  const headed = async (pattern: RegExp): Promise<string> => {
    await expect(heading).toContainText(pattern);
    return pattern.exec((await heading.textContent()) ?? "")?.[0] ?? "";
  };
  const leave = async (role: string) => {
    await page.context().clearCookies();
    await signInAs(role);
  };

  await signInAs("front-desk");
  await page.goto("/orders/new");
  await page.getByLabel("Customer", { exact: true }).selectOption({ label: "Oakes & Bellamy Glass" });
  await page.getByLabel("How many").fill("2");
  await page.getByLabel("Construction").fill("Mineral-insulated, 3 mm, insulated junction");
  await page.getByLabel("Setpoints (may stay empty)").fill("300 500 700 900 1100");
  await page.getByLabel("Tolerance", { exact: true }).selectOption({ label: "IEC 60584-1:2013, class 1" });
  const rule = page.getByLabel("Decision rule");
  await rule.selectOption({ label: optionLike(/^Guarded/)(await rule.locator("option").allTextContents()) });
  await page.getByLabel(/^Guard band/).fill("1");
  await page.getByLabel(/^Agreed by/).fill("Teodor Lisowski");
  await page.getByLabel(/^Agreed on/).fill(new Date(Date.now() - 86_400_000).toISOString().slice(0, 10));
  await page.getByRole("button", { name: "Record the order" }).click();
  const order = await headed(/O-\d{4}-\d{4}/);
  await acceptOrder(page);
  await page.goto(`/orders/${order}/receive`);
  await page.getByLabel("Serial numbers").fill("LEHR-11\nLEHR-12");
  await page.getByRole("button", { name: "Take them in" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/receive"));

  await leave("technician");
  await page.goto("/runs/new");
  for (const serial of ["LEHR-11", "LEHR-12"])
    await page
      .getByRole("row", { name: new RegExp(serial) })
      .getByRole("checkbox")
      .check();
  for (const tag of ["REF-S-01", "REF-S-02"]) await page.getByLabel(tag, { exact: true }).check();
  await page.getByRole("button", { name: "Place them" }).click();
  const rows = page.getByRole("table").getByRole("row");
  for (const [row, channel] of [
    [/REF-S-01/, "101"],
    [/LEHR-11/, "102"],
    [/LEHR-12/, "103"],
    [/REF-S-02/, "108"],
    [/shorted/, "120"],
  ] as const)
    await rows
      .filter({ hasText: row })
      .getByLabel(/^Channel of/)
      .fill(channel);
  await page.getByRole("button", { name: "Make the run" }).click();
  const run = await headed(/R-\d{4}-\d{4}/);

  await passGate(page, run, signInAs);
  await page
    .getByLabel("Readings file")
    .setInputFiles({ name: "lehr.csv", mimeType: "text/csv", buffer: scannerFile() });
  await page.getByRole("button", { name: "Upload" }).click();
  await expect(main).toContainText("lehr.csv");

  await page.goto(`/runs/${run}/windows`);
  const accept = page.getByRole("button", { name: "Accept the proposed window" });
  await expect(accept).toHaveCount(5);
  for (let left = 4; left >= 0; left--) {
    await accept.first().click();
    await expect(accept).toHaveCount(left);
    // The button's word changes while it works: the next press waits for the answer.
    await expect(main.getByText("Accepted as proposed")).toHaveCount(5 - left);
  }
  await page.goto(`/runs/${run}/results`);
  await page.getByRole("button", { name: "Evaluate the run" }).click();
  await expect(main).toContainText("±");
  // No tip was warmed: the run cannot be handed over without saying why.
  await page
    .getByLabel(/^Why the tips/)
    .fill("Checked with the previous load, which had the same connections.");
  await page.getByRole("button", { name: "Submit for review" }).click();
  await expect(main).toContainText("Submitted for review");

  await leave("signatory");
  await page.goto(`/review/${run}`);
  await expect(main).toContainText(/warm|tip/i);
  const cells = await page
    .getByRole("row", { name: /LEHR-11/ })
    .getByRole("link", { name: /±/ })
    .allTextContents();
  expect(cells).toHaveLength(5);

  // Back once, with a remark at the number it speaks of: until it is settled, nobody signs for that sensor.
  await page
    .getByRole("row", { name: /LEHR-11/ })
    .getByRole("link", { name: /±/ })
    .first()
    .click();
  await expect(heading).toContainText("300 °C");
  const result = new URL(page.url()).pathname;
  await page.getByText("Remark on the error").click();
  const remark = page.getByRole("form", { name: "Remark on the error" });
  await remark.getByLabel("Remark").fill("Larger than at 500 °C: was the immersion the same?");
  await remark.getByRole("button", { name: "Leave the remark" }).click();
  await expect(main).toContainText("Open remark");
  await page.goto(`/review/${run}`);
  await page.getByText("Return the run to the technician").click();
  await page.getByLabel("What to look at").fill("See the remark on LEHR-11 at 300 °C.");
  await page.getByRole("button", { name: "Return the run" }).click();
  await expect(main).toContainText("Returned");

  await leave("technician");
  await page.goto(`/runs/${run}/results`);
  await expect(main).toContainText("See the remark on LEHR-11 at 300 °C.");
  await page.goto(result);
  await page.locator("summary", { hasText: /^Answer$/ }).click();
  const answer = page.getByRole("form", { name: /^Answer remark/ });
  await answer.getByRole("textbox", { name: "Answer" }).fill("400 mm throughout, as the load says.");
  await expect(answer).toContainText("Whoever made the remark settles it, or a signatory.");
  await answer.getByRole("button", { name: "Answer" }).click();
  await expect(main).toContainText("400 mm throughout");
  await page.goto(`/runs/${run}/results`);
  await page.getByLabel(/^Why the tips/).fill("As said before; the remark is answered.");
  await page.getByRole("button", { name: "Submit for review" }).click();
  await expect(main).toContainText("Submitted for review");

  await leave("signatory");
  await page.goto(`/review/${run}`);
  await expect(main).toContainText("See the remark on LEHR-11 at 300 °C.");
  await page.locator("summary", { hasText: /^Answer$/ }).click();
  await answer.getByRole("textbox", { name: "Answer" }).fill("Then it stands.");
  await answer.getByLabel("This settles it").check();
  await answer.getByRole("button", { name: "Answer" }).click();
  await expect(main).toContainText("1 remark is settled");
  await pressSignOff(page);
  await expect(main.getByRole("link", { name: /^C-/ })).toHaveCount(2);

  await leave("Oakes");
  await page.goto("/portal/certificates");
  const downloading = page.waitForEvent("download");
  await page
    .getByRole("listitem")
    .filter({ hasText: "LEHR-11" })
    .getByRole("link", { name: /Download/ })
    .click();
  const text = await pdfText(await downloading);
  for (const cell of cells) {
    const [error = "", expanded = ""] = cell
      .replace(/\s+/g, " ")
      .split("±")
      .map((part) => part.trim());
    expect(text, `error ${error}`).toContain(` ${error} `);
    expect(text, `U ${expanded}`).toContain(` ${expanded} `);
  }
  expect(text).toContain("Agreed with Teodor Lisowski");
  expect(text).toContain("No tolerance defined");
});
