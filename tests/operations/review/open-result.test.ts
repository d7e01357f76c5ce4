import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { loadOpened } from "@/lib/data/review/load-opened";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { sha256 } from "@/lib/data/sha256";
import { decideOpened, openedState } from "@/lib/domain/review/decide-opened";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { openResult } from "@/lib/operations/review/open-result";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";

let database: TestDatabase;
let world: World;
let built: Awaited<ReturnType<typeof buildRun>>;
const laboratory = { kind: "laboratory" } as const;
const clock = () => new Date("2026-03-05T09:00:00Z");

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  built = await buildRun(world, {
    owners: ["north", "north"],
    change: (point, index) =>
      point.state === "measured" && index === 0 && point.nominalCelsius === 600
        ? { ...point, conformity: { ...point.conformity, state: "fail" } }
        : point,
  });
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const opened = (actor: { readonly personId: string }) =>
  inScope(laboratory, async (tx) => loadOpened(tx, (await loadReviewRun(tx, built.run.id))!, actor.personId));
const results = () =>
  inScope(laboratory, (tx) => tx.result.findMany({ where: { evaluationId: built.evaluation.id } }));
const open = (actor: Actor, result: { readonly sensorId: string; readonly setpointId: string }) =>
  execute(
    openResult,
    actor,
    {
      runId: built.run.id,
      evaluationId: built.evaluation.id,
      sensorId: result.sensorId,
      setpointId: result.setpointId,
    },
    clock,
  );

it("counts what this signatory opened, and lets nobody sign past the rest", async () => {
  const { signatory } = world.people;
  const before = await opened(signatory);
  const state = openedState({ ...before, sha256 });
  // One that fails and a tenth, rounded up, of the three others.
  expect(state.mustOpen).toHaveLength(2);
  expect(state.unopened).toHaveLength(2);
  const sensors = [...new Set(before.results.map(({ sensor }) => sensor))];
  expect(decideOpened({ ...before, sha256, sensors })).toMatchObject({ refusal: { code: "rule" } });
  for (const result of await results()) {
    const point = JSON.parse(result.point) as { sensor: string; setpoint: string };
    if (state.mustOpen.some((one) => one.sensor === point.sensor && one.setpoint === point.setpoint))
      await open(signatory, result);
  }
  expect(decideOpened({ ...(await opened(signatory)), sha256, sensors })).toMatchObject({ ok: true });
  // Another's openings are not theirs.
  expect((await opened(world.people.technician)).opened).toEqual([]);
  const events = await inScope(laboratory, (tx) =>
    tx.auditEvent.findMany({ where: { action: "review.result-opened", entityId: built.run.id } }),
  );
  expect(events).toHaveLength(2);
});

it("refuses a second opening, a result that is not there, another evaluation, and who does not sign", async () => {
  const all = await results();
  for (const result of all) await open(world.people.signatory, result).catch(() => null);
  await expect(open(world.people.signatory, all[0]!)).rejects.toMatchObject({
    refusal: { code: "wrong-state" },
  });
  const elsewhere = crypto.randomUUID();
  await expect(
    open(world.people.signatory, { sensorId: elsewhere, setpointId: all[0]!.setpointId }),
  ).rejects.toMatchObject({ refusal: { code: "not-found" } });
  await expect(open(world.people.desk, all[0]!)).rejects.toMatchObject({
    refusal: { code: "not-permitted" },
  });
  await expect(
    execute(
      openResult,
      world.people.signatory,
      {
        runId: built.run.id,
        evaluationId: elsewhere,
        sensorId: all[0]!.sensorId,
        setpointId: all[0]!.setpointId,
      },
      clock,
    ),
  ).rejects.toMatchObject({ refusal: { code: "changed-meanwhile" } });
});
