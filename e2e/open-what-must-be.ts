import type { Page } from "@playwright/test";

/** From a run's review page: opens each result that must be opened, one leading to the next, and comes back. */
export const openWhatMustBe = async (page: Page): Promise<void> => {
  const review = page.url().replace(/#.*$/, "");
  for (;;) {
    const next = page.getByRole("link", { name: /^Next that must be opened/ });
    if ((await next.count()) === 0) break;
    const address = (await next.first().getAttribute("href")) ?? "";
    await next.first().click();
    await page.waitForURL((url) => url.pathname === address);
    // Recorded, and counted by the page that comes after.
    await page.getByText("Opened by you").waitFor();
  }
  await page.goto(review);
};
