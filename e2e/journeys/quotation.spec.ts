import { pdfPages } from "@/tests/support/pdf-text";
import { violations } from "../axe";
import { expect, test } from "../fixtures";
import { mailedLink } from "../mailed-link";

test("the laboratory offers, and a customer agrees by the link of the mail, without an account and without a script", async ({
  page,
  browser,
  baseURL,
  signInAs,
  broughtAbout,
}) => {
  await signInAs("quality-manager");
  const main = page.getByRole("main");
  // An order of the demonstration that has an offer nobody has answered yet.
  await page.goto("/mail");
  const letter = (await main.textContent()) ?? "";
  const order = /for your order (O-\d{4}-\d{4}) is ready/.exec(letter)?.[1] ?? "";
  expect(order).not.toBe("");

  await page.goto(`/orders/${order}/quotation`);
  await expect(main).toContainText("Sum, without tax");
  await expect(main).toContainText("Waiting for the customer");
  await page.getByRole("button", { name: "Make the offer and mail it" }).click();
  await expect(main).toContainText(/Offer Q-\d{4}-\d{4} is made/);
  const offer = /Offer (Q-\d{4}-\d{4}) is made/.exec((await main.textContent()) ?? "")?.[1] ?? "";
  await expect(main).toContainText("Replaced");
  const path = await mailedLink(offer, "agree");
  const token = path.replace("/agree/", "");

  // A telephone of whoever buys there, at 320 px.
  const phone = await browser.newContext({ baseURL, bypassCSP: true, viewport: { width: 320, height: 640 } });
  const small = await phone.newPage();
  await small.goto(`/agree/${token}`);
  await expect(small.getByRole("heading", { level: 1 })).toHaveText(/^Offer Q-/);
  expect(await small.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  expect(await violations(small)).toEqual([]);
  const paper = await small.request.get(`/api/offers/${token}`);
  expect((await pdfPages(new Uint8Array(await paper.body()))).join(" ")).toContain(order);
  await phone.close();

  // Without JavaScript: refused at its field, with what was typed still there, then taken.
  const plain = await browser.newContext({ baseURL, javaScriptEnabled: false });
  const bare = await plain.newPage();
  await bare.goto(`/agree/${token}`);
  await expect(bare.getByRole("main")).toContainText("Decision rule");
  await bare.getByLabel(/^We agree/).check();
  await bare.getByLabel(/^Your purchase order/).fill("PO-BY-LINK");
  await bare.getByRole("button", { name: "Send the answer" }).click();
  await expect(bare.getByRole("main")).toContainText("Write your name");
  await expect(bare.getByLabel(/^We agree/)).toBeChecked();
  await bare.getByLabel("Your name").fill("Teodor Lisowski");
  await bare.getByRole("button", { name: "Send the answer" }).click();
  await expect(bare.getByRole("heading", { level: 1 })).toHaveText("Thank you");
  // Used, replaced and unknown look the same, and give nothing.
  for (const gone of [token, "a".repeat(43)]) {
    await bare.goto(`/agree/${gone}`);
    await expect(bare.getByRole("main")).toContainText("This link opens nothing any more");
    expect((await bare.request.get(`/api/offers/${gone}`)).status()).toBe(404);
  }
  await plain.close();

  await page.goto(`/orders/${order}/quotation`);
  await expect(main).toContainText("Agreed");
  await expect(main).toContainText("Teodor Lisowski");
  broughtAbout.push(/status of 404/);
});

test("the desk promises a day from the load of the furnaces, and another one with a reason", async ({
  page,
  signInAs,
}) => {
  await signInAs("front-desk");
  const main = page.getByRole("main");
  await page.goto("/shipments");
  const order =
    (await main
      .getByRole("link", { name: /^O-\d{4}-\d{4}$/ })
      .first()
      .textContent()) ?? "";
  await page.goto(`/orders/${order}`);
  await page.getByRole("link", { name: "Repeat the order" }).click();
  await page.getByRole("button", { name: "Make the order" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/repeat"));
  await expect(main.locator("#commerce")).toContainText(order);
  await page.getByRole("link", { name: "Promise a day" }).click();
  await expect(main).toContainText("furnace hours");
  await expect(
    page
      .getByRole("img", { name: /Furnaces and the hours taken/ })
      .or(page.getByRole("group", { name: /Furnaces and the hours taken/ }))
      .first(),
  ).toBeVisible();
  const proposed = await page.getByLabel("Promised for").inputValue();
  const later = new Date(Date.parse(proposed) + 14 * 86_400_000).toISOString().slice(0, 10);
  await page.getByLabel("Promised for").fill(later);
  await page.getByRole("button", { name: "Promise it and take the hours" }).click();
  await expect(main).toContainText(`The furnaces allow ${proposed}`);
  await page.getByLabel(/^Why it is another day/).fill("They need them after their holidays");
  await page.getByRole("button", { name: "Promise it and take the hours" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/promise"));
  await expect(main.locator("#commerce")).toContainText(later);
});

test("the desk sends finished sensors back in parts and hands what is finished to invoicing", async ({
  page,
  signInAs,
}) => {
  await signInAs("front-desk");
  const main = page.getByRole("main");
  await page.goto("/shipments");
  await main
    .getByRole("link", { name: /^O-\d{4}-\d{4}$/ })
    .first()
    .click();
  await page.waitForURL(/\/ship$/);
  const boxes = page.getByRole("group", { name: "Finished, with their certificates" }).getByRole("checkbox");
  await expect(boxes.first()).toBeVisible();
  const many = await boxes.count();
  expect(many).toBeGreaterThan(0);
  for (let at = 1; at < many; at += 1) await boxes.nth(at).uncheck();
  await page.getByRole("button", { name: "Send them back" }).click();
  await expect(main).toContainText("Write which carrier takes them");
  await page.getByLabel(/^Carrier/).fill("Invented Parcels");
  await page.getByRole("button", { name: "Send them back" }).click();
  await page.waitForURL(/\/quotation/);
  await expect(main).toContainText(/Delivery note S-\d{4}-\d{4}/);

  await page.goto("/invoicing");
  await page.getByRole("button", { name: "Hand all of it over" }).click();
  await expect(main).toContainText("Nothing waits");
  const file = main.getByRole("link", { name: /^I-\d{4}-\d{4}$/ }).first();
  const answer = await page.request.get((await file.getAttribute("href")) ?? "");
  expect(answer.headers()["content-type"]).toContain("text/csv");
  expect((await answer.text()).split("\r\n")[0]).toContain("purchase order");
});
