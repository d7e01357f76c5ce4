import { pdfPages } from "@/tests/support/pdf-text";
import { acceptOrder } from "../accept-order";
import { expect, test } from "../fixtures";

test("the front desk records an order, mends what is refused, accepts it, takes sensors in and labels them", async ({
  page,
  signInAs,
}) => {
  await signInAs("front-desk");
  const main = page.getByRole("main");
  await page.goto("/orders/new");
  await page.getByLabel("Customer", { exact: true }).selectOption({ label: "Oakes & Bellamy Glass" });
  await page.getByLabel("How many").fill("3");
  await page.getByLabel("Construction").fill("Mineral-insulated, 3 mm");
  await page.getByLabel("Tolerance", { exact: true }).selectOption({ label: "Customer’s own limit" });
  await page.getByLabel("Decision rule").selectOption({ value: "target-risk" });
  await page.getByLabel(/^Agreed by/).fill("Teodor Lisowski");
  await page.getByLabel(/^Agreed on/).fill(new Date(Date.now() - 86_400_000).toISOString().slice(0, 10));
  // A comma between digits could be two setpoints or one: it is refused at its field, and the rest stays.
  await page.getByLabel("Setpoints (may stay empty)").fill("300,500");
  await page.getByRole("button", { name: "Record the order" }).click();
  await expect(main).toContainText("A comma between two digits can be read in two ways");
  await expect(page.getByLabel("Construction")).toHaveValue("Mineral-insulated, 3 mm");
  await expect(page.getByLabel("How many")).toHaveValue("3");
  await page.getByLabel("Setpoints (may stay empty)").fill("300 500 700");
  await page.getByRole("button", { name: "Record the order" }).click();
  await expect(main).toContainText("Write the limit in °C");
  await page.getByLabel(/^Own limit/).fill("3.5");
  await page.getByRole("button", { name: "Record the order" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/O-\d{4}-\d{4}/);
  const number =
    /O-\d{4}-\d{4}/.exec((await page.getByRole("heading", { level: 1 }).textContent()) ?? "")?.[0] ?? "";

  // Contract review knows what U to expect before anything is measured.
  const review = page.locator("#review");
  await expect(review).toContainText("Type K at 700 °C");
  await expect(review).toContainText(/U about \d\.\d °C/);
  await expect(review).toContainText("own limit (± 3.5 °C), guarded acceptance by target risk: decidable");
  await expect(main).toContainText("judged by: The customer’s own limit, ± 3.5 °C");
  await expect(main).toContainText("false acceptance at most 5 %");

  const providers = page.getByRole("radio").first();
  if (await providers.isVisible()) await providers.check();
  await acceptOrder(page);

  await page.goto(`/orders/${number}/receive`);
  // More than was ordered is refused whole, with the paste still there.
  await page.getByLabel("Serial numbers").fill("E2E-1\nE2E-2\nE2E-3\nE2E-4");
  await page.getByRole("button", { name: "Take them in" }).click();
  await expect(main.getByRole("alert").first()).toBeVisible();
  await expect(page.getByLabel("Serial numbers")).toHaveValue(/E2E-4/);
  await page.getByLabel("Serial numbers").fill("E2E-1\nE2E-2\nE2E-3");
  await page.getByRole("button", { name: "Take them in" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/receive"));
  await page.goto(`/orders/${number}`);
  for (const serial of ["E2E-1", "E2E-2", "E2E-3"]) await expect(main).toContainText(serial);

  // The labels open in a tab of their own, which is the browser's own viewer: what it is sent is read here.
  const form = main.locator("form[action^='/api/labels/']").first();
  const fields = await form.evaluate((element: HTMLFormElement) =>
    Object.fromEntries([...new FormData(element)].map(([name, value]) => [name, String(value)])),
  );
  const labels = await page.request.post((await form.getAttribute("action")) ?? "", {
    form: fields,
    headers: { origin: new URL(page.url()).origin },
  });
  const text = (await pdfPages(new Uint8Array(await labels.body()))).join(" ");
  for (const part of ["E2E-1", "E2E-3", "T-"]) expect(text).toContain(part);
  expect(text, "a label names no customer").not.toContain("Oakes");
});
