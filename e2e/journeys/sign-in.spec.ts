import { expect, test } from "../fixtures";

test.describe("signing in", () => {
  for (const role of ["front-desk", "technician", "signatory", "quality-manager", "customer"]) {
    test(`as ${role} leads to a page of one's own`, async ({ page, signInAs }) => {
      await signInAs(role);
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      expect(new URL(page.url()).pathname).toMatch(
        role === "customer" ? /^\/portal/ : /^\/(?!portal|sign-in)/,
      );
    });
  }

  test("with a wrong password says so, and not which of the two was wrong", async ({ page, signIns }) => {
    const email = signIns[0]?.email ?? "";
    await page.goto("/sign-in");
    await page.getByLabel(/e-?mail/i).fill(email);
    await page.getByLabel(/password/i).fill("not the password");
    await page.getByRole("button", { name: /sign in/i }).click();
    await expect(page.getByRole("main")).toContainText("The address and the password do not fit together");
  });

  test("is asked for before any page is shown", async ({ page }) => {
    await page.goto("/");
    await expect(page).toHaveURL(/\/sign-in/);
  });
});
