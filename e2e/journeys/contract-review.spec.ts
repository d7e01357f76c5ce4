import { acceptOrder } from "../accept-order";
import { expect, test } from "../fixtures";

test("an order is answered while it is typed, settled, accepted, and changed after another review", async ({
  page,
  signInAs,
}) => {
  await signInAs("front-desk");
  const main = page.getByRole("main");
  await page.goto("/orders/new");
  await page.getByLabel("Customer", { exact: true }).selectOption({ label: "Brandt Höfle Heat Treatment" });
  await page.getByLabel("How many").fill("2");
  await page.getByLabel("Construction").fill("Mineral-insulated, 3 mm");
  await page.getByLabel("Setpoints (may stay empty)").fill("1000");
  await page.getByLabel("Tolerance", { exact: true }).selectOption({ label: "Customer’s own limit" });
  await page.getByLabel(/^Own limit/).fill("0.5");
  await page.getByLabel("Decision rule").selectOption({ value: "guarded" });
  await page.getByLabel(/^Guard band/).fill("1");

  // Nothing is recorded yet, and the platform answers.
  await expect(page.getByRole("status").filter({ hasText: "can be done here" })).toContainText(
    "1 of 1 point can be done here",
  );
  const answers = page.getByRole("table", { name: /Line 1: what could be stated/ });
  await expect(answers).toContainText("own limit (± 0.5 °C), guarded acceptance: not decidable; U about");
  await expect(answers).toContainText("What would help:");

  await page.getByText("Group, options and where it is done").click();
  await page.getByLabel(/^Name of the group/).fill("Zone 3");
  await page.getByLabel("Uncertainty budget on the certificate").check();
  await page.getByLabel(/^Agreed by/).fill("Ines Höfle");
  await page.getByLabel(/^Agreed on/).fill(new Date(Date.now() - 86_400_000).toISOString().slice(0, 10));
  await page.getByRole("button", { name: "Record the order" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/O-\d{4}-\d{4}/);
  const number =
    /O-\d{4}-\d{4}/.exec((await page.getByRole("heading", { level: 1 }).textContent()) ?? "")?.[0] ?? "";
  await expect(main).toContainText("Zone 3");
  await expect(main).toContainText("Uncertainty budget on the certificate");

  // Two people amend it at once: the later one is told, and keeps what was typed.
  await page.goto(`/orders/${number}/amend`);
  const other = await page.context().newPage();
  await other.goto(`/orders/${number}/amend`);
  await other.getByLabel("How many").fill("3");
  await other.getByRole("button", { name: "Save the order" }).click();
  await other.waitForURL((url) => url.pathname === `/orders/${number}`);
  await page.getByLabel(/^Note for the laboratory/).fill("typed at the same time");
  await page.getByRole("button", { name: "Save the order" }).click();
  await expect(main.getByRole("alert").first()).toBeVisible();
  await expect(page.getByLabel(/^Note for the laboratory/)).toHaveValue("typed at the same time");
  await other.close();

  // A difference stops the acceptance until it is settled with somebody.
  await page.goto(`/orders/${number}`);
  await page.getByText("Raise a difference", { exact: true }).click();
  await page.getByLabel("What is asked, and what can be done").fill("± 0.5 °C asked; ± 4 °C can be decided");
  await page.getByRole("button", { name: "Raise it" }).click();
  await expect(main).toContainText("A difference is not settled");
  await expect(page.getByRole("button", { name: "Accept the order" })).toHaveCount(0);
  await page.getByText("Settle it with the customer", { exact: true }).click();
  await page.getByLabel("How it was settled").fill("The values alone are wanted");
  await page.getByLabel("With whom of the customer").fill("Ines Höfle");
  await page.getByRole("button", { name: "Settle it" }).click();
  await expect(main).toContainText("Settled with Ines Höfle");
  await acceptOrder(page);
  await expect(page.locator("#reviews")).toContainText("before acceptance");

  // What was accepted changes with a reason, and is reviewed again.
  await page.goto(`/orders/${number}/change`);
  await page.getByLabel("Why it changes").fill("The furnace is used up to 900 °C only");
  await page.getByLabel("Agreed with, of the customer").fill("Ines Höfle");
  await page.getByLabel("Setpoints (may stay empty)").fill("900");
  await page.getByLabel(/defined, documented and understood/).check();
  await page.getByLabel(/capability and the resources/).check();
  await page.getByLabel(/method suits what is required/).check();
  await page.getByRole("button", { name: "Change the order" }).click();
  await page.waitForURL((url) => url.pathname === `/orders/${number}`);
  const change = page.getByRole("table", { name: "What change 1 changed." });
  await expect(change).toContainText("Line 1, setpoints");
  await expect(change).toContainText("1000 °C");
  await expect(change).toContainText("900 °C");
});

test("a run with a sensor of a changed order stands still until a technician has read what changed", async ({
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
  await page.getByLabel("Construction").fill("Mineral-insulated, 3 mm, insulated junction");
  await page.getByLabel("Setpoints (may stay empty)").fill("300 500 700");
  await page.getByRole("button", { name: "Record the order" }).click();
  const order = await headed(/O-\d{4}-\d{4}/);
  await acceptOrder(page);
  await page.goto(`/orders/${order}/receive`);
  await page.getByLabel("Serial numbers").fill("CHANGED-1");
  await page.getByRole("button", { name: "Take them in" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/receive"));

  await leave("technician");
  await page.goto("/runs/new");
  await page
    .getByRole("row", { name: /CHANGED-1/ })
    .getByRole("checkbox")
    .check();
  for (const tag of ["REF-S-01", "REF-S-02"]) await page.getByLabel(tag, { exact: true }).check();
  await page.getByRole("button", { name: "Place them" }).click();
  const rows = page.getByRole("table").getByRole("row");
  for (const [row, channel] of [
    [/REF-S-01/, "101"],
    [/CHANGED-1/, "102"],
    [/REF-S-02/, "108"],
    [/shorted/, "120"],
  ] as const)
    await rows
      .filter({ hasText: row })
      .getByLabel(/^Channel of/)
      .fill(channel);
  await page.getByRole("button", { name: "Make the run" }).click();
  const run = await headed(/R-\d{4}-\d{4}/);

  await leave("front-desk");
  await page.goto(`/orders/${order}/change`);
  await page.getByLabel("Why it changes").fill("700 °C is not used any more");
  await page.getByLabel("Agreed with, of the customer").fill("Teodor Lisowski");
  await page.getByLabel("Setpoints (may stay empty)").fill("300 500");
  await page.getByLabel(/defined, documented and understood/).check();
  await page.getByLabel(/capability and the resources/).check();
  await page.getByLabel(/method suits what is required/).check();
  await page.getByRole("button", { name: "Change the order" }).click();
  await page.waitForURL((url) => url.pathname === `/orders/${order}`);
  await expect(page.locator("#history")).toContainText(`${run} stands still until it is acknowledged`);

  await leave("technician");
  await page.goto(`/runs/${run}`);
  await expect(main).toContainText(`order ${order} was changed; this run stands still`);
  const changed = page.getByRole("table", { name: "What changed." });
  await expect(changed).toContainText("300 500 700 °C");
  await page.getByRole("button", { name: "I have read it: go on" }).click();
  await expect(main).not.toContainText("this run stands still");
});
