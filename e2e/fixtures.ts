import { test as base, expect } from "@playwright/test";
import { type SignIn, signIn } from "./sign-in";

type Fixtures = {
  /** The demo laboratory's people, as the seed named them. */
  readonly signIns: readonly SignIn[];
  /** Signs in as the first person of that role (part of its name will do), through the page that people use. */
  readonly signInAs: (role: string) => Promise<SignIn>;
  /** Fails the test if the browser reports an error: a broken script, a refused style, a missing file. */
  readonly noPageErrors: undefined;
  /** Errors this journey brings about on purpose, such as the browser's own note of a refused upload. */
  readonly broughtAbout: RegExp[];
};

export const test = base.extend<Fixtures>({
  signIns: async ({ browserName: _ }, use) => {
    await use(JSON.parse(process.env.E2E_SIGN_INS ?? "[]") as readonly SignIn[]);
  },
  signInAs: async ({ page, signIns }, use) => {
    await use(async (role) => {
      const person = signIns.find((candidate) => candidate.role.toLowerCase().includes(role.toLowerCase()));
      if (person === undefined) throw new Error(`The demo laboratory has no ${role}.`);
      await signIn(page, person);
      return person;
    });
  },
  broughtAbout: async ({ browserName: _ }, use) => {
    await use([]);
  },
  noPageErrors: [
    async ({ page, broughtAbout }, use) => {
      const told: string[] = [];
      page.on("pageerror", (error) => told.push(error.message));
      page.on("console", (message) => message.type() === "error" && told.push(message.text()));
      await use(undefined);
      const unexpected = told.filter((text) => !broughtAbout.some((known) => known.test(text)));
      expect(unexpected, "errors the browser reported").toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
