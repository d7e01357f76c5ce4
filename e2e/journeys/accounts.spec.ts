import type { Page } from "@playwright/test";
import { violations } from "../axe";
import { expect, test } from "../fixtures";
import { mailedLink } from "../mailed-link";

const password = "a bench of quiet words";
const later = "quite another set of words";

const enter = async (page: Page, email: string, typed: string, atBench = false) => {
  await page.goto("/sign-in");
  await page.getByLabel(/e-?mail/i).fill(email);
  await page.getByLabel("Password", { exact: true }).fill(typed);
  if (atBench) await page.getByLabel("At the bench").check();
  await page.getByRole("button", { name: "Sign in" }).click();
};

test("somebody is invited, works at the bench, and forgets the password", async ({
  page,
  browser,
  signInAs,
}) => {
  test.setTimeout(240_000);
  const email = `bench-${Date.now()}@example.test`;

  await test.step("the quality manager invites a technician", async () => {
    await signInAs("quality-manager");
    await page.goto("/staff");
    const form = page.getByRole("form", { name: "Invite a person" });
    await form.getByLabel("Name").fill("Robin Invited");
    await form.getByLabel("E-mail address").fill(email);
    await form.getByLabel("Technician").check();
    await form.getByRole("button", { name: "Send the invitation" }).click();
    await expect(page.getByText("The invitation is on its way")).toBeVisible();
    await expect(page.getByRole("table", { name: "Invitations that wait" })).toContainText(email);
  });

  // Without JavaScript: every form on the way in is a plain one.
  const plain = await browser.newContext({ javaScriptEnabled: false });
  const visitor = await plain.newPage();

  await test.step("the link lets them in, once", async () => {
    const link = await mailedLink(email, "invitation");
    await visitor.goto(link);
    await visitor.getByLabel("New password", { exact: true }).fill(password);
    await visitor.getByLabel("The same again").fill(password);
    await visitor.getByRole("button", { name: "Set the password" }).click();
    await expect(visitor.getByText("Your password is set")).toBeVisible();
    await visitor.goto(link);
    await expect(visitor.getByText("This link opens nothing any more")).toBeVisible();
  });

  await test.step("at the bench they record and do not sign, and the shell says so", async () => {
    await enter(visitor, email, password, true);
    await expect(visitor.getByText("At the bench: records, does not sign")).toBeVisible();
    await visitor.goto("/account");
    await expect(visitor.getByRole("table", { name: "Your sessions" })).toContainText("at the bench");
  });

  await test.step("a forgotten password: the answer is the same for everybody, and a link ends the session", async () => {
    const another = await browser.newContext({ javaScriptEnabled: false });
    const elsewhere = await another.newPage();
    for (const asked of ["nobody@example.test", email]) {
      await elsewhere.goto("/reset");
      await elsewhere.getByLabel("E-mail address").fill(asked);
      await elsewhere.getByRole("button", { name: "Send me a link" }).click();
      await expect(elsewhere.getByText("If somebody signs in with this address")).toBeVisible();
    }
    await elsewhere.goto(await mailedLink(email, "reset"));
    await elsewhere.getByLabel("New password", { exact: true }).fill(later);
    await elsewhere.getByLabel("The same again").fill(later);
    await elsewhere.getByRole("button", { name: "Set the password" }).click();
    await expect(elsewhere.getByText("Your password is changed")).toBeVisible();
    await visitor.goto("/");
    await expect(visitor).toHaveURL(/\/sign-in/);
    await another.close();
  });

  await test.step("the pages on the way in are read by everybody", async () => {
    for (const place of ["/sign-in", "/reset", "/invitation/unknown"]) {
      await page.context().clearCookies();
      await page.goto(place);
      expect(await violations(page)).toEqual([]);
    }
    await plain.close();
  });
});
