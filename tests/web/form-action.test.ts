import { encode } from "next-auth/jwt";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { eventOf } from "@/lib/domain/audit/define-event";
import { staffEvents } from "@/lib/domain/staff/events";
import { recordCustomer } from "@/lib/operations/customer/record";
import { defineOperation } from "@/lib/operations/operation";
import { beginSession } from "@/lib/operations/staff/sign-in-session";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";

/** The request as the framework would tell it; everything behind it is the product itself. */
const request = vi.hoisted(() => ({
  origin: null as string | null,
  session: undefined as string | undefined,
}));
vi.mock("next/headers", () => ({
  headers: async () => new Headers(request.origin === null ? {} : { origin: request.origin }),
  cookies: async () => ({ get: () => (request.session ? { value: request.session } : undefined) }),
}));
vi.mock("next/cache", () => ({ refresh: () => {}, revalidatePath: () => {} }));

const publicUrl = "https://calibration.example";
const secret = "a secret of thirty-two characters";
let database: TestDatabase;
let world: World;

/** A person's own session, and the cookie that says so. */
const claimsOf = async (person: { readonly personId: string }) => {
  const opened = await beginSession({ personId: person.personId, ...full }, () => new Date());
  return { ...opened, signedInAt: Date.now() / 1000 };
};
const full = {
  sessionEpoch: 1,
  atBench: false,
  cameBy: "password",
  hadCode: false,
  device: "a test",
} as const;
const signedIn = async (person: { readonly personId: string }, claims: object = {}) =>
  encode({ secret, token: { ...(await claimsOf(person)), ...claims } });

const record = formAction(recordCustomer, {
  parse: (data) => ({
    name: text(data, "name"),
    addressLines: text(data, "addressLines"),
    contactName: text(data, "contactName"),
    email: text(data, "email"),
  }),
  done: () => ({ redirect: "/customers" }),
});

const form = (fields: Readonly<Record<string, string>> = {}) => {
  const data = new FormData();
  const all = { name: "West", addressLines: "3 Lane", contactName: "Lee", email: "lee@west.test", ...fields };
  for (const [name, value] of Object.entries(all)) data.set(name, value);
  return data;
};
const send = (data: FormData) => record({ status: "idle" }, data);
const customers = () =>
  inScope({ kind: "laboratory" }, (tx) => tx.customer.count({ where: { email: "lee@west.test" } }));

beforeAll(async () => {
  database = await testDatabase();
  process.env.DATABASE_URL = database.runtimeUrl;
  process.env.NEXTAUTH_SECRET = secret;
  process.env.PUBLIC_URL = publicUrl;
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});
beforeEach(async () => {
  request.origin = publicUrl;
  request.session = await signedIn(world.people.desk);
});

describe("formAction", () => {
  it.each([
    [null, "a missing Origin"],
    ["null", "the Origin of a sandboxed frame"],
    ["https://elsewhere.example", "a foreign Origin"],
    ["http://calibration.example", "plain http"],
    ["https://calibration.example:8443", "another port"],
    ["https://calibration.example.elsewhere.example", "a longer host"],
  ])("refuses %j (%s) before anything else, and keeps what was typed", async (origin, _what) => {
    request.origin = origin;
    const state = await send(form());
    expect(state).toMatchObject({
      status: "refused",
      message: expect.stringContaining(publicUrl),
      values: { name: "West" },
    });
    expect(await customers()).toBe(0);
  });

  it("refuses without a session, with a stranger's, and with one that is over", async () => {
    const desk = world.people.desk;
    const sessions = [
      undefined,
      "not a token",
      await encode({
        secret: `${secret}!`,
        token: await claimsOf(desk),
      }),
      await signedIn(desk, { sessionEpoch: 2 }),
      await signedIn(desk, { signedInAt: Date.now() / 1000 - 12 * 60 * 60 }),
      await signedIn(desk, { personId: world.people.signatory.personId }),
      await signedIn(desk, { sessionId: "00000000-0000-4000-8000-000000000000" }),
      await signedIn(desk, { sessionId: undefined }),
    ];
    for (const session of sessions) {
      request.session = session;
      expect(await send(form())).toMatchObject({
        status: "refused",
        message: expect.stringContaining("session has ended"),
      });
    }
    expect(await customers()).toBe(0);
  });

  it("takes roles from the database, never from the session", async () => {
    request.session = await signedIn(world.people.signatory, { roles: ["front-desk", "quality-manager"] });
    expect(await send(form())).toMatchObject({
      status: "refused",
      message: expect.stringContaining("roles"),
    });
    expect(await customers()).toBe(0);
  });

  it("says at each field what is wrong, and sends back everything but passwords", async () => {
    const state = await send(
      form({ email: "nowhere", password: "typed", oldPassword: "typed", $ACTION_ID: "x" }),
    );
    expect(state).toMatchObject({ status: "refused", fields: { email: expect.stringContaining("@") } });
    expect(state).toHaveProperty("values", {
      name: "West",
      addressLines: "3 Lane",
      contactName: "Lee",
      email: "nowhere",
    });
  });

  it("goes where the operation leads, once it is stored", async () => {
    await expect(send(form())).rejects.toMatchObject({ digest: expect.stringContaining("/customers") });
    expect(await customers()).toBe(1);
  });

  it("says in the operation's own word what was stored but is no good news", async () => {
    const nothing = defineOperation({
      name: "test/not-passed",
      permission: "signed-in",
      input: z.strictObject({}),
      perform: async () => ({ value: null, events: [eventOf(staffEvents.signedIn, "", {})] }),
    });
    const told = { caution: "Not passed", message: "Warm it again." };
    const send = formAction(nothing, { parse: () => ({}), done: () => told });
    expect(await send({ status: "idle" }, form())).toEqual({ status: "done", ...told });
  });

  describe("when something unexpected happens", () => {
    let told: unknown[][] = [];
    const before = console.error;
    beforeEach(() => {
      told = [];
      console.error = (...parts: unknown[]) => void told.push(parts);
    });
    afterEach(() => {
      console.error = before;
    });

    it("tells the log, and the person nothing of it", async () => {
      const failing = defineOperation({
        name: "test/fail",
        permission: "signed-in",
        input: z.strictObject({}),
        perform: async ({ tx }) => {
          await tx.customer.create({
            data: { name: "Half", addressLines: "-", contactName: "-", email: "half@west.test" },
          });
          if (told.length === 0) throw new Error("column secret_column does not exist");
          return { value: null, events: [eventOf(staffEvents.signedIn, "", {})] };
        },
      });
      const state = await formAction(failing, { parse: () => ({}) })({ status: "idle" }, form());
      expect(JSON.stringify(state)).not.toContain("secret_column");
      expect(state).toMatchObject({
        status: "refused",
        message: expect.stringContaining("nothing was stored"),
      });
      expect(told).toEqual([
        ["test/fail failed", expect.objectContaining({ message: expect.stringContaining("secret_column") })],
      ]);
      const half = await inScope({ kind: "laboratory" }, (tx) =>
        tx.customer.count({ where: { name: "Half" } }),
      );
      expect(half).toBe(0);
    });
  });
});
