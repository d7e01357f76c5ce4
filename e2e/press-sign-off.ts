import type { Page } from "@playwright/test";
import { freshCode } from "./one-time-code";
import { openWhatMustBe } from "./open-what-must-be";
import type { SignIn } from "./sign-in";

/** Who signs in the demonstration. */
const signatory = (): SignIn & { readonly codeKey: string } => {
  const all = JSON.parse(process.env.E2E_SIGN_INS ?? "[]") as readonly SignIn[];
  const found = all.find(({ role }) => role.includes("signatory"));
  if (found?.codeKey === undefined) throw new Error("the demonstration's signatory has no one-time codes");
  return { ...found, codeKey: found.codeKey };
};

/** Password and one-time code, where the form of a signature asks for them. */
export const giveSignature = async (page: Page): Promise<void> => {
  const person = signatory();
  await page.getByLabel("Your password").fill(person.password);
  await page.getByLabel("A one-time code").fill(await freshCode(person));
};

/** Opens on the review page, and signs what is ticked there. */
export const pressSignOff = async (page: Page): Promise<void> => {
  await openWhatMustBe(page);
  await giveSignature(page);
  await page.getByRole("button", { name: "Sign off" }).click();
};
