import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import type { Actor } from "@/lib/domain/staff/actor";
import { grantAuthorisation } from "@/lib/operations/authorisation/grant";
import { withdrawAuthorisation } from "@/lib/operations/authorisation/withdraw";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { authorisationsView } from "@/lib/views/authorisations";
import { signingStandingView } from "@/lib/views/signing-standing";
import { refusal } from "../../support/accounts";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signClock, signOffInput } from "../../support/sign-run";
import { authorisationRow, inLaboratory } from "../../support/signatory";

let database: TestDatabase;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const typed = (change: object = {}) => ({
  ...{
    personId: world.people.signatory.personId,
    activity: "sign-off" as const,
    typeLetters: ["K" as const],
  },
  ...{ fromCelsius: 0, toCelsius: 1200, scope: "inside" as const, procedureId: null },
  ...{ validFrom: "2026-03-01", validUntil: null, basis: "Ten runs reviewed beside a signatory." },
  ...change,
});
const grant = (actor: Actor, change: object = {}) =>
  execute(grantAuthorisation, actor, typed(change), signClock);
const withdraw = (actor: Actor, authorisationId: string, reason = "Long absence.") =>
  execute(withdrawAuthorisation, actor, { authorisationId, reason }, signClock);

it("is granted by a quality manager, to another, with grounds; and stands on the person's page", async () => {
  const { quality, signatory, desk, north } = world.people;
  const { id } = await grant(quality);
  const page = await authorisationsView(quality, signatory.personId, signClock());
  expect(page).toMatchObject({ mayGrant: true, mayWithdraw: true, isSignatory: true });
  expect(page.held.find((one) => one.id === id)).toMatchObject({
    ...{ state: "in-force", activity: "Sign off results", types: "type K", range: "0 °C to 1200 °C" },
    ...{ basis: "Ten runs reviewed beside a signatory.", grantedBy: "Quinn Quality", withdrawal: null },
  });
  for (const actor of [signatory, desk, north]) expect(await codeOf(grant(actor))).toBe("not-permitted");
  expect(await codeOf(authorisationsView(signatory, signatory.personId, signClock()))).toBe("not-permitted");
});

it("refuses oneself, a customer's person, a day that is over, a procedure nobody has", async () => {
  const { quality, north } = world.people;
  expect(await codeOf(grant(quality, { personId: quality.personId }))).toBe("rule");
  expect((await authorisationsView(quality, quality.personId, signClock())).mayGrant).toBe(false);
  expect(await codeOf(grant(quality, { personId: north.personId }))).toBe("not-found");
  for (const [field, change] of [
    ["validUntil", { validFrom: "2026-01-01", validUntil: "2026-03-04" }],
    ["procedureId", { procedureId: crypto.randomUUID() }],
    ["basis", { basis: "" }],
    ["toCelsius", { toCelsius: 0 }],
  ] as const)
    expect(await refusal(grant(quality, change))).toMatchObject({ fields: { [field]: expect.any(String) } });
  // The last defence, where nobody asked the operation.
  await expect(
    inLaboratory((tx) => authorisationRow(tx, quality.personId, quality.personId)),
  ).rejects.toThrow(/authorisation_by_another/);
});

it("is withdrawn with a reason, once, and signs nothing from then on; what was signed stays", async () => {
  const { quality, signatory } = world.people;
  const sign = async () => {
    const built = await buildRun(world, { owners: ["north"] });
    return execute(signOff, signatory, await signOffInput(built), signClock);
  };
  await sign();
  const held = (await authorisationsView(quality, signatory.personId, signClock())).held;
  expect(held.length).toBeGreaterThan(1);
  for (const { id } of held) await withdraw(quality, id);
  expect(await codeOf(withdraw(quality, held[0]!.id))).toBe("wrong-state");
  expect(await codeOf(withdraw(quality, crypto.randomUUID()))).toBe("not-found");
  expect(await refusal(sign())).toMatchObject({
    code: "rule",
    message: expect.stringContaining("your authorisation was withdrawn"),
  });
  expect(await signingStandingView(signatory, signClock())).toMatchObject({
    ...{ authorisations: [], hasSecondFactor: true, isAtBench: false },
    continuedUntil: "2026-03-05T10:15:00.000Z",
  });
  const page = await authorisationsView(quality, signatory.personId, signClock());
  expect(page.held[0]).toMatchObject({
    state: "withdrawn",
    withdrawal: { by: "Quinn Quality", reason: "Long absence." },
  });
  const events = await inLaboratory((tx) =>
    tx.auditEvent.findMany({ where: { entityKind: "authorisation" }, orderBy: { sequence: "asc" } }),
  );
  expect(events.map(({ action }) => action)).toEqual([
    "authorisation.granted",
    ...held.map(() => "authorisation.withdrawn"),
  ]);
  expect(await inLaboratory((tx) => tx.signature.count({ where: { personId: signatory.personId } }))).toBe(1);
});
