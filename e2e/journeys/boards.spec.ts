import { violations } from "../axe";
import { expect, test } from "../fixtures";

test("the front desk sees the week, opens what a number counts, and finds anything from one box", async ({
  page,
  signInAs,
}) => {
  await signInAs("front-desk");
  const main = page.getByRole("main");
  const heading = page.getByRole("heading", { level: 1 });
  await page.goto("/board");
  await expect(heading).toHaveText("The week");
  // The number and the list it leads to count the same.
  const stat = main.locator(".stat", { hasText: "Sensors here" });
  const counted = (await stat.locator(".stat-value").textContent())?.trim() ?? "";
  await stat.getByRole("link").click();
  await expect(heading).toHaveText("Sensors");
  await expect(main).toContainText(`${counted} sensor`);

  // A sensor's serial, its order and its customer, as the list shows them.
  const row = main.getByRole("row").nth(1);
  const serial = (await row.getByRole("cell").nth(0).textContent())?.trim() ?? "";
  const order = (await row.getByRole("link", { name: /^O-/ }).textContent())?.trim() ?? "";
  const customer = row.getByRole("link").last();
  const name = (await customer.textContent())?.trim() ?? "";
  await customer.click();
  await expect(page, "a filter is an address").toHaveURL(/customer=/);
  await expect(main.getByRole("navigation", { name: "Only" })).toContainText(name);

  // The key / leads into the box from anywhere; Enter asks.
  const find = async (text: string) => {
    await heading.click();
    await page.keyboard.press("/");
    await expect(page.getByLabel(/^Find/).first()).toBeFocused();
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await expect(heading).toContainText(text);
  };
  await find(serial.toLowerCase());
  await expect(main.getByRole("heading", { name: "Sensors" })).toBeVisible();
  await expect(
    main.getByRole("link", { name: new RegExp(serial.replace(/\W/g, ".")) }).first(),
  ).toBeVisible();
  await find(order);
  await main.getByRole("link", { name: order, exact: true }).first().click();
  await expect(heading).toContainText(order);
  await find(name.slice(0, 5).toLowerCase());
  await expect(main.getByRole("link", { name })).toBeVisible();

  await page.goto("/orders?show=all");
  const bought = main
    .getByRole("row")
    .filter({ hasText: /O-\d{4}-\d{4}/ })
    .locator("td[data-label='Their number']");
  const purchase =
    (await bought.allTextContents()).map((text) => text.trim()).find((text) => text !== "") ?? "";
  expect(purchase, "the demonstration has an order with a number of its customer's").not.toBe("");
  await find(purchase.toLowerCase());
  await expect(main).toContainText(`their ${purchase}`);
  await find("no such thing");
  await expect(main).toContainText("Nothing has this name");
  expect(await violations(page)).toEqual([]);
});

test("a certificate is found by its number, and a customer comes to none of these pages", async ({
  page,
  signInAs,
}) => {
  await signInAs("signatory");
  const main = page.getByRole("main");
  await page.goto("/certificates");
  const link = main.getByRole("link", { name: /^C-\d{4}-/ }).first();
  const number = (await link.textContent())?.trim() ?? "";
  await page.goto(`/search?q=${number.toLowerCase()}`);
  await main.getByRole("link", { name: number, exact: true }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(number);

  await page.context().clearCookies();
  await signInAs("customer");
  for (const address of ["/board", `/search?q=${number}`, "/orders", "/"]) {
    await page.goto(address);
    await expect(page.getByRole("navigation", { name: "Laboratory" })).toHaveCount(0);
    await expect(page.getByRole("heading", { name: "The week" })).toHaveCount(0);
    await expect(page.getByRole("link", { name: number, exact: true })).toHaveCount(0);
  }
});
