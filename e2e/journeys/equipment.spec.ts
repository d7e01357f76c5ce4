import type { Page } from "@playwright/test";
import { violations } from "../axe";
import { expect, test } from "../fixtures";

/** From receipt to service, a failed check, and back: no step left out, and the label's code tells each. */

const open = async (page: Page, tag: string): Promise<string> => {
  await page.goto("/standards");
  await page.getByRole("link", { name: tag, exact: true }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(tag);
  return page.url();
};

test("a scanner is recorded, verified, put into service, fails a check, and is suspect at once", async ({
  page,
  signInAs,
}) => {
  const main = page.getByRole("main");
  await signInAs("technician");
  await page.goto("/standards/new?kind=scanner");
  await page.getByLabel("Tag").fill("SC-09");
  await page.getByLabel("Maker").fill("Invented Works");
  await page.getByLabel("Serial number").fill("S-9");
  await page.getByLabel(/Parasitic emf/).fill("1");
  await page.getByLabel(/What these figures rest on/).fill("every channel shorted, invented");
  await page.getByRole("button", { name: "Record it" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("SC-09");
  const here = page.url();
  await expect(main).toContainText("Received: not verified yet");
  // Only steps that would be taken are offered.
  await expect(page.getByLabel("Next step").getByRole("option")).toHaveText([
    "Choose the new state",
    "Under repair",
    "Retired",
  ]);

  await page.getByRole("link", { name: "Write into the logbook" }).click();
  await page.getByLabel("Held against").fill("its order, invented");
  await page.getByLabel(/^Passed/).check();
  await page.getByLabel("What was done and found").fill("Complete; every channel reads.");
  await page.getByRole("button", { name: "Write it down" }).click();
  await expect(page).toHaveURL(here);
  await expect(main).toContainText(
    "Its record does not say the day it was received (6.4.13 c), where it is (6.4.13 d)",
  );

  await page.getByRole("link", { name: "Change the record" }).click();
  await page.getByLabel("Received on").fill("2026-01-05");
  await page.getByLabel("Where it is").fill("Bench 2");
  await page.getByLabel("Firmware").fill("1.0");
  await page.getByRole("button", { name: "Save" }).click();
  await page.getByLabel("Next step").selectOption("In service");
  await page.getByLabel("Why").fill("verified");
  await page.getByRole("button", { name: "Set the state" }).click();
  await expect(main).toContainText("Nothing in its logbook stands against its use");

  await page.goto("/standards/SC-09/status");
  await expect(main).toContainText("May be used");
  expect(await violations(page)).toEqual([]);

  await page.goto(here);
  await page.getByRole("link", { name: "Write into the logbook" }).click();
  await page.getByLabel("What was compared with what").fill("channel 101 shorted");
  await page.getByLabel("Expected").fill("0");
  await page.getByLabel("Found").first().fill("2.4");
  await page.getByLabel("Still passes within ±").fill("1");
  await page.getByLabel("Unit").selectOption("µV");
  await page.getByLabel("What was done and found").fill("Read for a minute.");
  await page.getByRole("button", { name: "Write it down" }).click();
  await expect(page).toHaveURL(here);
  await expect(main).toContainText("Suspect: not to be used");
  await expect(main).toContainText("No run was made with it");
  await page.goto("/standards/SC-09/status");
  await expect(main).toContainText("Not to be used");
  await expect(main).toContainText("SC-09 is suspect");

  await page.goto("/standards?show=not-to-be-used");
  await expect(main.getByRole("row", { name: /SC-09/ })).toContainText("Suspect");
});

test("a reference shows its wear, its drift and its checks, and its label is printed", async ({
  page,
  signInAs,
}) => {
  const main = page.getByRole("main");
  await signInAs("technician");
  const here = await open(page, "REF-S-02");
  await expect(main.getByRole("img", { name: /24 checks; limits at 2 s and 3 s/ }).first()).toBeAttached();
  expect(await violations(page)).toEqual([]);
  await page.getByRole("link", { name: "Health" }).click();
  const wear = page.getByRole("table", { name: "Wear" });
  await expect(wear.getByRole("row", { name: /Its calibration/ })).toBeVisible();
  await expect(page.getByRole("table", { name: "What each run cost it" }).getByRole("row")).not.toHaveCount(
    1,
  );
  expect(await violations(page)).toEqual([]);

  // The page with the file is a tab of its own; what is printed is a line of the logbook.
  await page.goto(here);
  const printed = page.waitForEvent("popup");
  await page.getByRole("button", { name: "Print its label" }).click();
  await (await printed).close();
  await page.reload();
  await expect(page.getByRole("table", { name: "Logbook" }).getByRole("row").nth(1)).toContainText(
    "Label printed",
  );
});
