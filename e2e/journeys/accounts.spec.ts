import type { Page } from "@playwright/test";
import { violations } from "../axe";
import { expect, test } from "../fixtures";
import { mailedLink } from "../mailed-link";
import { codeOf } from "../one-time-code";

const password = "a bench of quiet words";
const later = "quite another set of words";

const enter = async (page: Page, email: string, typed: string, atBench = false) => {
  await page.goto("/sign-in");
  await page.getByLabel(/e-?mail/i).fill(email);
  await page.getByLabel("Password", { exact: true }).fill(typed);
  if (atBench) await page.getByLabel("At the bench").check();
  await page.getByRole("button", { name: "Sign in" }).click();
};

test("somebody is invited, works at the bench, forgets the password, and sets up one-time codes", async ({
  page,
  browser,
  signInAs,
}) => {
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

  const recovery: string[] = [];
  await test.step("one-time codes are set up from the key on the page", async () => {
    await enter(visitor, email, later);
    await visitor.goto("/account/codes");
    await visitor.getByLabel("Your password").fill(later);
    await visitor.getByRole("button", { name: "Show the picture to scan" }).click();
    await expect(visitor.getByRole("img", { name: /QR code/ })).toBeVisible();
    const key = (await visitor.getByText(/^([A-Z2-7]{4} ){7}[A-Z2-7]{4}$/).textContent()) ?? "";
    const field = visitor.getByLabel("The code that it shows now");
    await expect(field).toHaveAttribute("autocomplete", "one-time-code");
    await field.fill(codeOf(key, Date.now()));
    await visitor.getByRole("button", { name: "Set the codes up" }).click();
    const codes = visitor.getByRole("list", { name: "Recovery codes" }).getByRole("listitem");
    await expect(codes).toHaveCount(10);
    recovery.push(...(await codes.allTextContents()));
    await visitor.getByRole("button", { name: "I have kept them" }).click();
    await expect(visitor.getByText("10 of 10 recovery codes are left")).toBeVisible();
    await visitor.goto("/account/recovery");
    await expect(visitor.getByRole("list", { name: "Recovery codes" })).toHaveCount(0);
  });

  await test.step("the next sign-in asks for a code; a wrong one opens nothing, a recovery code opens it once", async () => {
    await visitor.goto("/sign-out");
    await visitor.getByRole("button", { name: "Sign out" }).click();
    await enter(visitor, email, later);
    await expect(visitor.getByRole("heading", { name: "One-time code" })).toBeVisible();
    await visitor.getByLabel("Code", { exact: true }).fill("000000");
    await visitor.getByRole("button", { name: "Go on" }).click();
    await expect(visitor.getByText("This code does not fit")).toBeVisible();
    await visitor.goto("/orders");
    await expect(visitor).toHaveURL(/\/sign-in/);
    await visitor.goto("/second-factor");
    await visitor.getByLabel("Code", { exact: true }).fill(recovery[0] ?? "");
    await visitor.getByRole("button", { name: "Go on" }).click();
    await visitor.goto("/account");
    await expect(visitor.getByText("9 of 10 recovery codes are left")).toBeVisible();
  });

  await test.step("another session is seen, and ended from here", async () => {
    const second = await browser.newContext();
    const other = await second.newPage();
    await enter(other, email, later);
    await other.getByLabel("Code", { exact: true }).fill(recovery[1] ?? "");
    await other.getByRole("button", { name: "Go on" }).click();
    await other.waitForURL((url) => !url.pathname.startsWith("/second-factor"));
    await other.goto("/account");
    await expect(other.getByRole("table", { name: "Your sessions" })).toContainText("the one you are in");
    expect(await violations(other)).toEqual([]);
    await visitor.goto("/account");
    await visitor.getByRole("button", { name: "End all the others" }).click();
    await expect(visitor.getByText("Every other session of yours has ended")).toBeVisible();
    await other.goto("/orders");
    await expect(other).toHaveURL(/\/sign-in/);
    await second.close();
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
