import type { Page } from "@playwright/test";
import { freshCode } from "./one-time-code";

export type SignIn = {
  readonly role: string;
  readonly email: string;
  readonly password: string;
  /** Of whoever signs in and signs certificates with one-time codes. */
  readonly codeKey?: string;
};

const elsewhere = (url: URL): boolean => !/^\/(sign-?in|api\/auth|second-factor)/.test(url.pathname);

/** The second step, where there is one, by the field that has focus already. */
export const giveCode = async (page: Page, { email, codeKey }: SignIn): Promise<void> => {
  if (codeKey === undefined) return;
  await page.waitForURL((url) => url.pathname.startsWith("/second-factor"));
  await page.getByRole("textbox", { name: "Code" }).fill(await freshCode({ email, codeKey }));
  await page.keyboard.press("Enter");
};

/** Through the page that people use. */
export const signIn = async (page: Page, person: SignIn): Promise<void> => {
  await page.goto("/sign-in");
  await page.getByLabel(/e-?mail/i).fill(person.email);
  await page.getByLabel(/password/i).fill(person.password);
  await page.getByRole("button", { name: /sign in/i }).click();
  await giveCode(page, person);
  await page.waitForURL(elsewhere);
};
