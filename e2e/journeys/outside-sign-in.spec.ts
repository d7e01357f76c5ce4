import type { Page } from "@playwright/test";
import type { OidcFault } from "@/tests/support/oidc-server";
import { expect, test } from "../fixtures";

const provider = process.env.E2E_OIDC_ISSUER ?? "";
const next = (subject: string, fault: OidcFault = "none") =>
  fetch(`${provider}/next`, { method: "POST", body: JSON.stringify({ subject, fault }) });

const byProvider = async (page: Page) => {
  await page.context().clearCookies();
  await page.goto("/sign-in");
  await page.getByRole("button", { name: /organisation’s own provider/ }).click();
};

// OpenID Connect Core 1.0, 3.1.3.7: issuer, audience, signature, time and nonce of an ID token are checked.
const faults = ["nonce", "issuer", "audience", "expired", "signature"] as const;

test("an account is linked with the organisation's provider, opens by it, and by nothing it cannot vouch for", async ({
  page,
  signInAs,
}) => {
  const subject = `subject-${Date.now()}`;
  // Nobody linked: the provider's word opens nothing.
  await next(subject);
  await byProvider(page);
  await expect(page.getByRole("main")).toContainText("no account here is linked with it");

  const person = await signInAs("technician");
  await page.goto("/account");
  const link = page.getByRole("form", { name: "Link with the provider" });
  await link.getByLabel("Your password").fill("not the password");
  await link.getByRole("button", { name: "Link with the provider" }).click();
  await expect(page.getByRole("main")).toContainText("This is not your present password");
  await link.getByLabel("Your password").fill(person.password);
  await link.getByRole("button", { name: "Link with the provider" }).click();
  await page.getByRole("button", { name: "Go to the provider" }).click();
  await expect(page.getByRole("main")).toContainText("Your account is linked");

  for (const fault of faults) {
    await next(subject, fault);
    await byProvider(page);
    await expect(page.getByRole("main"), fault).toContainText("could not be relied on");
    await page.goto("/orders");
    await expect(page, fault).toHaveURL(/\/sign-in/);
  }
  await next(`${subject}-other`);
  await byProvider(page);
  await expect(page.getByRole("main")).toContainText("no account here is linked with it");

  await next(subject);
  await byProvider(page);
  await page.goto("/account");
  await expect(page.getByRole("main")).toContainText("You are signed in as Tamsin Okoro");

  const part = page.getByRole("form", { name: "Part from the provider" });
  await part.getByLabel("Your password").fill(person.password);
  await part.getByRole("button", { name: "Part from the provider" }).click();
  await expect(page.getByRole("main")).toContainText("The link is gone");
  await byProvider(page);
  await expect(page.getByRole("main")).toContainText("no account here is linked with it");
});
