import { violations } from "../axe";
import { expect, test } from "../fixtures";

test("a customer asks for work, sets an interval, and requests what is due again", async ({
  page,
  signInAs,
}) => {
  await signInAs("Brandt");
  await page.goto("/portal");
  const main = page.getByRole("main");
  await page.getByRole("link", { name: "Request work" }).click();
  await page.getByRole("button", { name: "Send the request" }).click();
  await expect(main).toContainText("Describe the sensor");
  await page.getByLabel("What it looks like").fill("Metal-sheathed, 3 mm, 400 mm long, plug");
  await page.getByLabel("How many").fill("6");
  await page.getByLabel("Your unit").selectOption({ label: "°F" });
  await page.getByLabel("Used from").fill("500");
  await page.getByLabel("Used up to").fill("1500");
  await page.getByLabel("Send them back to").selectOption({ index: 1 });
  await page.getByLabel("Your order number").fill("PO-PORTAL-1");
  await page.getByRole("button", { name: "Send the request" }).click();
  await page.waitForURL(/\/portal\/orders\/O-/);
  await expect(main).toContainText("Asked for");
  await expect(main).toContainText("temperatures we propose");
  await expect(main).toContainText("PO-PORTAL-1");

  await page.goto("/portal/sensors");
  const all = page.getByRole("form", { name: "Interval for all" });
  await all.getByLabel("Calibrate again after").fill("0");
  await all.getByRole("button", { name: "Set it for all" }).click();
  await expect(all).toContainText("from 1 to 120");
  await all.getByLabel("Calibrate again after").fill("18");
  await all.getByRole("button", { name: "Set it for all" }).click();
  await expect(all).toContainText("every 18 months");
  await expect(main).toContainText("Due soon");
  await page.getByRole("button", { name: "Request the ticked ones again" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Request work");
  await expect(page.getByLabel("Anything else we should know")).toHaveValue(/^Once more, please: /);
  await expect(page.getByLabel("What it looks like")).not.toHaveValue("");
});

test("a customer follows a sensor through its certificates and takes everything along", async ({
  page,
  signInAs,
}) => {
  await signInAs("Brandt");
  await page.goto("/portal/sensors");
  await page.getByRole("main").getByRole("list").getByRole("link").first().click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Sensor ");
  await expect(page.getByRole("img", { name: /over the years/ }).first()).toBeVisible();
  await expect(page.getByRole("main")).toContainText("The first");

  await page.goto("/portal/certificates");
  await expect(page.getByRole("link", { name: /^All \d+ of them \(ZIP, \d+\.\d MB\)$/ })).toBeVisible();
  const zip = await page.request.get("/api/portal/certificates");
  expect(zip.status()).toBe(200);
  const bytes = await zip.body();
  expect(zip.headers()["content-disposition"]).toContain("certificates.zip");
  expect(bytes.subarray(0, 4).toString("latin1")).toBe("PK\u0003\u0004");
  const table = await page.request.get("/api/portal/results");
  const lines = (await table.text()).trim().split("\r\n");
  expect(lines[0]).toContain("certificate,issued_on");
  expect(lines.length).toBeGreaterThan(2);
});

test("a customer keeps addresses and colleagues, and sees nothing of another's", async ({
  page,
  signInAs,
  browser,
  baseURL,
}) => {
  await signInAs("Brandt");
  await page.goto("/portal/addresses");
  const add = page.getByRole("form", { name: "Add an address" });
  await add.getByLabel("Short name").fill("Works 5");
  await add.getByLabel("Address").fill("Bay 5\nEastmoor");
  await add.getByRole("button", { name: "Add it" }).click();
  await expect(page.getByRole("heading", { name: "Works 5" })).toBeVisible();
  await page.goto("/portal/colleagues");
  await expect(page.getByRole("main")).toContainText("Jorun Feld");
  const own = (await page.request.get("/api/portal/results")).text();
  const [order] = /O-\d{4}-\d{4}/.exec(await own) ?? [""];

  const context = await browser.newContext({ baseURL: baseURL ?? "" });
  const other = await context.newPage();
  await other.goto("/sign-in");
  await other.getByLabel(/e-?mail/i).fill("teodor@oakes-bellamy.example");
  await other.getByLabel(/password/i).fill("warm each tip first");
  await other.getByRole("button", { name: /sign in/i }).click();
  await other.waitForURL(/\/portal/);
  for (const path of [`/portal/orders/${order}`, `/portal/orders/${order}/offer`]) {
    const answer = await other.request.get(path);
    expect(`${path} ${answer.status()}`).toBe(`${path} 404`);
  }
  for (const path of ["certificates", "results"])
    expect((await other.request.get(`/api/portal/${path}?order=${order}`)).status()).toBe(404);
  expect(
    (
      await (await browser.newContext({ baseURL: baseURL ?? "" })).request.get("/api/portal/results")
    ).status(),
  ).toBe(404);
  await context.close();
});

test("the customer's pages hold to WCAG and fit a telephone", async ({ page, signInAs }) => {
  await signInAs("Brandt");
  await page.setViewportSize({ width: 390, height: 844 });
  for (const path of [
    "",
    "/request",
    "/sensors",
    "/addresses",
    "/colleagues",
    "/complaints",
    "/orders",
    "/certificates",
  ]) {
    await page.goto(`/portal${path}`);
    expect((await violations(page)).map((found) => `${path} ${found}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  }
});
