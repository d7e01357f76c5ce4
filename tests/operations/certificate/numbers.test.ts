import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { nextNumber } from "@/lib/data/number/next-number";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signClock, signingAct, signOffInput } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
type Input = Awaited<ReturnType<typeof signOffInput>>;
/** One certificate each, of sensors of five runs. */
const inputs: Input[] = [];

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  for (let run = 0; run < 5; run += 1) {
    const built = await buildRun(world, { owners: Array.from({ length: 10 }, () => "north" as const) });
    const { items, ...rest } = await signOffInput(built);
    for (const item of items) inputs.push({ ...rest, items: [item], act: signingAct() });
  }
});
afterAll(async () => {
  await closeDatabase();
  await database?.drop();
});

const sign = (input: Input) => execute(signOff, world.people.signatory, input, signClock);

/** Takes a number and then comes to nothing, as a sign-off that fails at its last step. */
const comeToNothing = () =>
  inScope({ kind: "laboratory" }, async (tx) => {
    await nextNumber(tx, "certificate-2026");
    throw new Error("came to nothing");
  });

it("are gapless after fifty sign-offs at once, with refusals and failures among them", async () => {
  expect(inputs).toHaveLength(50);
  const refused = inputs.slice(0, 8).map(({ items, ...rest }) => ({
    ...rest,
    act: signingAct(),
    items: items.map((item) => ({ ...item, reviewedHash: "0".repeat(64) })),
  }));
  const [signed, codes, failed] = await Promise.all([
    Promise.all(inputs.map(sign)),
    Promise.all(refused.map((input) => codeOf(sign(input)))),
    Promise.allSettled(Array.from({ length: 8 }, comeToNothing)),
  ]);
  // Signed meanwhile by the right one, or refused for what it shows: never a certificate.
  for (const code of codes) expect(["changed-meanwhile", "wrong-state"]).toContain(code);
  expect(failed.map(({ status }) => status)).toEqual(Array.from({ length: 8 }, () => "rejected"));
  const numbers = signed.flatMap(({ certificates }) => certificates.map(({ number }) => number));
  const expected = Array.from({ length: 50 }, (_, at) => `C-2026-${String(at + 1).padStart(4, "0")}`);
  expect(numbers.toSorted()).toEqual(expected);
  const stored = await inScope({ kind: "laboratory" }, (tx) =>
    tx.certificate.findMany({ select: { number: true }, orderBy: { number: "asc" } }),
  );
  expect(stored.map(({ number }) => number)).toEqual(expected);
  const told = await inScope({ kind: "laboratory" }, (tx) =>
    tx.auditEvent.count({ where: { action: "certificate.signed-off" } }),
  );
  expect(told).toBe(50);
});
