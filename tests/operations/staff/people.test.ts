import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { configureLaboratory } from "@/lib/operations/laboratory/configure";
import { acceptFirstAccess } from "@/lib/operations/staff/accept-first-access";
import { addPerson } from "@/lib/operations/staff/add-person";
import { changePerson } from "@/lib/operations/staff/change-person";
import { createFirstAccessLink } from "@/lib/operations/staff/first-access";
import { setPersonActive } from "@/lib/operations/staff/set-active";
import { signIn } from "@/lib/operations/staff/sign-in";
import { isFirstAccessOpenView } from "@/lib/views/first-access";
import { peopleView } from "@/lib/views/people";
import { type TestDatabase, testDatabase } from "../../support/database";

let database: TestDatabase;
let manager: Actor & { readonly personId: string };
const laboratoryScope = { kind: "laboratory" } as const;
const clock = () => new Date("2026-03-04T08:00:00Z");
const password = "warm each tip first";
const publicUrl = "https://calibration.example";
const door: Actor = { kind: "system", name: "first-access" };

const refusal = (work: Promise<unknown>) =>
  work.then(
    () => "answered",
    (error) => (error instanceof Refused ? error.refusal : error),
  );

const laboratory = {
  name: "Invented Calibration",
  addressLines: "1 Lane",
  contact: "+00 000",
  accreditationText: "",
  countryCode: "gb",
  performerMaySignOff: false,
};

const newcomer = (token: string) => ({ token, laboratory, name: "Ada", email: "Ada@example.test", password });
const tokenOf = (link: string | undefined) => new URL(link ?? "").pathname.split("/").at(-1) ?? "";
const offer = (at = clock) =>
  createFirstAccessLink({ databaseUrl: database.runtimeUrl, publicUrl, clock: at });

beforeAll(async () => {
  database = await testDatabase();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

describe("first access", () => {
  it("opens once, within a day, to whoever holds the link; the database knows only its hash", async () => {
    const link = await offer();
    expect(link).toMatch(/^https:\/\/calibration\.example\/first-access\/[\w-]{43}$/);
    const token = tokenOf(link);
    configureDatabase(database.runtimeUrl);
    const rows = await inScope(laboratoryScope, (tx) => tx.firstAccess.findMany());
    expect(JSON.stringify(rows)).not.toContain(token);

    const tooLate = new Date(clock().getTime() + 24 * 60 * 60_000);
    expect(await isFirstAccessOpenView(token, clock())).toBe(true);
    expect(await isFirstAccessOpenView(token, tooLate)).toBe(false);
    expect(await isFirstAccessOpenView(`${token}x`, clock())).toBe(false);
    expect(await refusal(execute(acceptFirstAccess, door, newcomer(token), () => tooLate))).toMatchObject({
      code: "wrong-state",
    });
    // A refused form does not use the link up.
    expect(
      await refusal(execute(acceptFirstAccess, door, { ...newcomer(token), password: "short" }, clock)),
    ).toMatchObject({
      code: "invalid",
      fields: { password: expect.stringContaining("12") },
    });

    const twice = await Promise.all([
      refusal(execute(acceptFirstAccess, door, newcomer(token), clock)),
      refusal(execute(acceptFirstAccess, door, { ...newcomer(token), email: "b@example.test" }, clock)),
    ]);
    expect(twice.filter((one) => one === "answered")).toHaveLength(1);
    expect(await inScope(laboratoryScope, (tx) => tx.person.count())).toBe(1);
    const { id } = await inScope(laboratoryScope, (tx) => tx.person.findFirstOrThrow());
    manager = { kind: "staff", personId: id, name: "Ada", roles: ["quality-manager"] };
  });

  it("is over once somebody can sign in", async () => {
    expect(await offer()).toBeUndefined();
    configureDatabase(database.runtimeUrl);
    const { email } = await inScope(laboratoryScope, (tx) => tx.person.findFirstOrThrow());
    expect((await signIn({ email, password }, clock, publicUrl)).kind).toBe("welcome");
    const stored = await inScope(laboratoryScope, (tx) =>
      tx.laboratory.findUniqueOrThrow({ where: { id: "laboratory" } }),
    );
    expect(stored).toMatchObject({ name: "Invented Calibration", countryCode: "GB", isDemo: false });
  });
});

describe("people", () => {
  const add = (input: object, actor: Actor = manager) =>
    execute(
      addPerson,
      actor,
      { name: "Bo", email: "bo@example.test", roles: ["technician"], customerId: null, password, ...input },
      clock,
    );

  it("are added by a quality manager only, with at least one role, an address nobody has, and a fair password", async () => {
    const technician: Actor = { ...manager, roles: ["technician", "signatory", "front-desk"] } as Actor;
    expect(await refusal(add({}, technician))).toMatchObject({ code: "not-permitted" });
    expect(await refusal(add({ roles: [] }))).toMatchObject({ fields: { roles: expect.any(String) } });
    expect(await refusal(add({ roles: ["customer"] }))).toMatchObject({ code: "invalid" });
    expect(await refusal(add({ customerId: manager.personId, roles: [] }))).toMatchObject({
      fields: { customerId: expect.any(String) },
    });
    expect(await refusal(add({ password: "bo@example.test" }))).toMatchObject({
      fields: { password: expect.stringContaining("whose") },
    });
    await add({ roles: ["technician", "signatory", "technician"] });
    expect(await refusal(add({ email: " BO@example.test" }))).toMatchObject({
      fields: { email: expect.any(String) },
    });
    const { people } = await peopleView(manager, clock());
    expect(people.find(({ name }) => name === "Bo")?.roles).toEqual(["signatory", "technician"]);
    expect(JSON.stringify(people)).not.toContain("argon2");
  });

  it("keep a quality manager: the last one can neither give up the role nor be deactivated", async () => {
    const { people } = await peopleView(manager, clock());
    const own = people.find(({ id }) => id === manager.personId);
    const change = {
      id: manager.personId,
      version: 1,
      name: "Ada",
      email: own?.email ?? "",
      roles: ["technician" as const],
    };
    expect(await refusal(execute(changePerson, manager, change, clock))).toMatchObject({ code: "rule" });
    const off = { id: manager.personId, version: 1, active: false };
    expect(
      await refusal(execute(setPersonActive, { kind: "system", name: "test" }, off, clock)),
    ).toMatchObject({
      code: "rule",
    });
    const second = await add({ name: "Cy", email: "cy@example.test", roles: ["quality-manager"] });
    const other: Actor = { kind: "staff", personId: second.id, name: "Cy", roles: ["quality-manager"] };
    expect(await refusal(execute(setPersonActive, manager, off, clock))).toMatchObject({ code: "rule" });
    expect(await refusal(execute(setPersonActive, other, off, clock))).toBe("answered");
  });

  it("save the laboratory's settings one after the other: the second of two is told", async () => {
    const { performerMaySignOff: _, ...rest } = laboratory;
    const wanted = { ...rest, performerMaySignOff: true, version: 1 };
    await execute(configureLaboratory, manager, wanted, clock);
    expect(
      await refusal(execute(configureLaboratory, manager, { ...wanted, name: "Late" }, clock)),
    ).toMatchObject({
      code: "changed-meanwhile",
    });
    const event = await inScope(laboratoryScope, (tx) =>
      tx.auditEvent.findFirstOrThrow({ where: { action: "laboratory.configured" } }),
    );
    expect(JSON.parse(event.payload)).toMatchObject({ performerMaySignOff: true });
  });
});
