import type { Page } from "@playwright/test";
import { expect } from "./fixtures";

/** Accepts the order that is open: each question of the contract review answered, and waited for. */
export const acceptOrder = async (page: Page): Promise<void> => {
  const first = page.getByLabel(/defined, documented and understood/);
  await first.check();
  await page.getByLabel(/capability and the resources/).check();
  await page.getByLabel(/method suits what is required/).check();
  const told = page.getByLabel(/told of what is listed/);
  if (await told.isVisible()) await told.check();
  await page.getByRole("button", { name: "Accept the order" }).click();
  // The word "Accepted" stands there before, and the button changes its own while it works: the form gone says so.
  await expect(first).toHaveCount(0);
};
