import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { ownAccountOf } from "@/lib/domain/staff/actor";
import { recordCustomer } from "@/lib/operations/customer/record";
import { execute } from "@/lib/operations/execute";
import { addPerson } from "@/lib/operations/staff/add-person";
import { changeOwnPassword } from "@/lib/operations/staff/change-own-password";
import { changePerson } from "@/lib/operations/staff/change-person";
import { setPersonActive } from "@/lib/operations/staff/set-active";
import { setPassword } from "@/lib/operations/staff/set-password";
import { signIn } from "@/lib/operations/staff/sign-in";
import { signOut } from "@/lib/operations/staff/sign-out";
import { actorView } from "@/lib/views/actor";
import { type TestDatabase, testDatabase } from "../../support/database";

let database: TestDatabase;
const system: Actor = { kind: "system", name: "test" };
const publicUrl = "https://calibration.example";
const password = "warm each tip first";
let moment = Date.parse("2026-03-04T08:00:00Z");
const clock = () => new Date(moment);
const wait = (seconds: number) => {
  moment += seconds * 1000;
};

const person = async (name: string, customerId: string | null = null) => {
  const email = `${name}@example.test`;
  const roles = customerId ? [] : (["technician"] as const);
  const input = { name, email, roles: [...roles], customerId, password };
  return { email, name, id: (await execute(addPerson, system, input, clock)).id };
};

const session = async (email: string, typed = password) => {
  const answer = await signIn({ email, password: typed }, clock, publicUrl);
  if (answer.kind !== "welcome") throw new Error(`not welcome: ${answer.kind}`);
  const still = async () => (await actorView(answer, clock()))?.actor ?? null;
  return { ...answer, still };
};

const version = (id: string) =>
  inScope(
    { kind: "laboratory" },
    async (tx) => (await tx.person.findUniqueOrThrow({ where: { id } })).version,
  );

const eventsAbout = (entityId: string) =>
  inScope({ kind: "laboratory" }, async (tx) =>
    (await tx.auditEvent.findMany({ where: { entityId }, orderBy: { sequence: "asc" } })).map(
      ({ action, actorId, payload }) => ({ action, actorId, payload }),
    ),
  );

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

describe("signing in", () => {
  it("answers with the person and the epoch, and leaves an event in the person's own name", async () => {
    const mira = await person("mira");
    const opened = await session(" MIRA@example.test ");
    expect(opened.personId).toBe(mira.id);
    expect(await opened.still()).toEqual({
      kind: "staff",
      personId: mira.id,
      name: "mira",
      roles: ["technician"],
      session: "full",
      sessionId: opened.sessionId,
    });
    expect((await eventsAbout(mira.id)).at(-1)).toEqual({
      action: "account.session-began",
      actorId: mira.id,
      payload: '{"cameBy":"password","hadCode":false,"kind":"full"}',
    });
  });

  it("gives one answer to a wrong password, an unknown address and a deactivated person, and tells the log which", async () => {
    const noor = await person("noor");
    const gone = await person("gone");
    await execute(setPersonActive, system, { id: gone.id, version: 1, active: false }, clock);
    const answers = [
      await signIn({ email: noor.email, password: "not the password" }, clock, publicUrl),
      await signIn({ email: "nobody@example.test", password }, clock, publicUrl),
      await signIn({ email: gone.email, password }, clock, publicUrl),
      await signIn({ email: noor.email, password: "x".repeat(201) }, clock, publicUrl),
    ];
    expect(answers).toEqual(Array.from({ length: 4 }, () => ({ kind: "refused" })));
    const refused = { action: "staff.sign-in-refused", actorId: "system:sign-in" };
    expect((await eventsAbout(noor.id)).at(-1)).toMatchObject({
      ...refused,
      payload: '{"reason":"wrong-password"}',
    });
    expect((await eventsAbout(gone.id)).at(-1)).toMatchObject({
      ...refused,
      payload: '{"reason":"inactive"}',
    });
    expect((await eventsAbout("")).at(-1)).toMatchObject({
      ...refused,
      payload: '{"reason":"unknown-address"}',
    });
    const log = await inScope({ kind: "laboratory" }, (tx) => tx.auditEvent.findMany());
    expect(log.some(({ payload }) => payload.includes("@"))).toBe(false);
  });

  it("slows guessing down, also when the guesses come all at once, for known and unknown addresses alike", async () => {
    const known = await person("slow");
    for (const email of [known.email, "unknown@example.test"]) {
      const guesses = await Promise.all(
        Array.from({ length: 12 }, (_, index) =>
          signIn({ email, password: `guess number ${index}` }, clock, publicUrl),
        ),
      );
      expect(guesses.filter((answer) => answer.kind === "refused")).toHaveLength(5);
      expect(guesses.filter((answer) => answer.kind === "wait")).toHaveLength(7);
    }
    // Even the right password waits, so that waiting tells nothing; then it opens, and the count begins anew.
    expect(await signIn({ email: known.email, password }, clock, publicUrl)).toEqual({
      kind: "wait",
      seconds: 2,
    });
    wait(2);
    await session(known.email);
    expect((await signIn({ email: known.email, password: "a wrong one again" }, clock, publicUrl)).kind).toBe(
      "refused",
    );
  });
});

describe("a session ends", () => {
  it("by deactivation, and stays ended after reactivation", async () => {
    const { id, email } = await person("lior");
    const opened = await session(email);
    await execute(setPersonActive, system, { id, version: await version(id), active: false }, clock);
    expect(await opened.still()).toBeNull();
    await execute(setPersonActive, system, { id, version: await version(id), active: true }, clock);
    expect(await opened.still()).toBeNull();
    expect(await (await session(email)).still()).not.toBeNull();
  });

  it("by signing out, by a new password, and by a change of roles", async () => {
    const own = await person("owen");
    const first = await session(own.email);
    const { sessionId } = first;
    await execute(signOut, ownAccountOf({ personId: own.id, name: own.name, sessionId }), {}, clock);
    expect(await first.still()).toBeNull();

    const second = await session(own.email);
    await execute(setPassword, system, { id: own.id, password: "another set of words" }, clock);
    expect(await second.still()).toBeNull();

    const third = await session(own.email, "another set of words");
    const change = {
      ...own,
      version: await version(own.id),
      roles: ["signatory" as const, "technician" as const],
    };
    await execute(changePerson, system, change, clock);
    expect(await third.still()).toBeNull();
    expect(await (await session(own.email, "another set of words")).still()).toMatchObject({
      roles: ["signatory", "technician"],
    });
  });

  it("for a customer's person too, who may change their own password and nothing else", async () => {
    const customer = await execute(
      recordCustomer,
      system,
      { name: "North", addressLines: "1 Lane", contactName: "Lee", email: "lee@north.test" },
      clock,
    );
    const { id, email, name } = await person("nell", customer.id);
    const opened = await session(email);
    expect(await opened.still()).toMatchObject({
      kind: "customer",
      customerId: customer.id,
      roles: ["customer", "customer-orderer", "customer-manager"],
    });
    const account = ownAccountOf({ personId: id, name });
    const typed = { password: "a longer set of words", passwordAgain: "a longer set of words" };
    await expect(
      execute(changeOwnPassword, account, { oldPassword: "not the old one", ...typed }, clock),
    ).rejects.toMatchObject({ refusal: { fields: { oldPassword: expect.any(String) } } });
    expect(await opened.still()).not.toBeNull();
    await execute(changeOwnPassword, account, { oldPassword: password, ...typed }, clock);
    expect(await opened.still()).toBeNull();
    expect((await signIn({ email, password }, clock, publicUrl)).kind).toBe("refused");
    await session(email, typed.password);
    await expect(
      execute(setPassword, account, { id, password: "yet another set of words" }, clock),
    ).rejects.toMatchObject({ refusal: { code: "not-permitted" } });
  });
});
