import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { demandRepeatsAuthorised } from "@/lib/data/parts/demand-repeats-authorised";
import { loadRun } from "@/lib/data/run/load-run";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { letSensorGo } from "@/lib/operations/review/let-sensor-go";
import { abandonRun } from "@/lib/operations/run/abandon";
import { authoriseRepeat } from "@/lib/operations/run/authorise-repeat";
import { buildRun, type RunOptions } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signClock } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
const laboratory = { kind: "laboratory" } as const;
const reason = "The lead came loose, invented.";

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

type Built = Awaited<ReturnType<typeof buildRun>>;
const refused = (code: string) => ({ refusal: { code } });

/** As it stands before its first reading. */
const plan = (built: Built) =>
  inScope(laboratory, async (tx) => {
    await tx.run.update({ where: { id: built.run.id }, data: { state: "planned", startedAt: null } });
    await tx.sensor.updateMany({
      where: { id: { in: built.sensors.map(({ id }) => id) } },
      data: { state: "loaded" },
    });
  });

const measuredBefore = async (change: Partial<RunOptions> = {}) => {
  const first = await buildRun(world, { owners: ["north"], ...change });
  await execute(
    letSensorGo,
    world.people.signatory,
    {
      runId: first.run.id,
      evaluationId: first.evaluation.id,
      sensorId: first.sensors[0]!.id,
      results: "put-back",
      reason,
    },
    signClock,
  );
  const createdAt = new Date("2026-03-04T08:00:00Z");
  const second = await buildRun(world, { owners: ["north"], again: first.sensors, createdAt });
  await plan(second);
  return { first, second };
};

const authorise = (built: Built, actor: Actor = world.people.quality, sensor = built.sensors[0]!.tag) =>
  execute(authoriseRepeat, actor, { run: built.run.number, sensor, reason }, signClock);
const firstReading = (built: Built) =>
  inScope(laboratory, async (tx) => demandRepeatsAuthorised(tx, (await loadRun(tx, built.run.number))!));

describe("a repeat", () => {
  it("is authorised before the first reading, with the rule of the order, and only once", async () => {
    const { first, second } = await measuredBefore({
      lineOptions: { countingRule: "earlier-counts-if-they-agree" },
    });
    await expect(firstReading(second)).rejects.toMatchObject(refused("rule"));
    expect(await authorise(second)).toEqual({
      sensor: second.sensors[0]!.tag,
      earlierRun: first.run.number,
      countingRule: "earlier-counts-if-they-agree",
    });
    await firstReading(second);
    await expect(authorise(second)).rejects.toMatchObject(refused("wrong-state"));
    const row = await inScope(laboratory, (tx) =>
      tx.repeatMeasurement.findFirstOrThrow({ where: { runId: second.run.id } }),
    );
    expect(row).toMatchObject({ earlierRunId: first.run.id, countingRule: "earlier-counts-if-they-agree" });
  });

  it("is nobody's own: not the technician's, not the front desk's", async () => {
    const { second } = await measuredBefore();
    for (const actor of [world.people.desk, world.people.north])
      await expect(authorise(second, actor)).rejects.toMatchObject(refused("not-permitted"));
  });

  it("is refused for a first measurement, a sensor of another load, and a run with readings", async () => {
    const plain = await buildRun(world, { owners: ["north"] });
    await plan(plain);
    await firstReading(plain);
    await expect(authorise(plain)).rejects.toMatchObject(refused("rule"));
    const { second } = await measuredBefore();
    await expect(authorise(second, world.people.quality, plain.sensors[0]!.tag)).rejects.toMatchObject(
      refused("not-found"),
    );
  });

  it("is not one where the earlier run did not reach the setpoint", async () => {
    const { second } = await measuredBefore({
      change: ({ sensor, setpoint, type, nominalCelsius }) => ({
        state: "not-reached",
        sensor,
        setpoint,
        type,
        nominalCelsius,
        reason: "the furnace failed, invented",
      }),
    });
    await firstReading(second);
    await expect(authorise(second)).rejects.toMatchObject(refused("rule"));
  });
});

describe("a run that comes to nothing", () => {
  const abandon = (built: Built, version: number, actor: Actor = world.people.technician) =>
    execute(abandonRun, actor, { run: built.run.number, version, reason }, signClock);
  const versionOf = (built: Built) =>
    inScope(
      laboratory,
      async (tx) => (await tx.run.findUniqueOrThrow({ where: { id: built.run.id } })).version,
    );

  it("gives its sensors back and keeps what it has", async () => {
    const built = await buildRun(world, { owners: ["north", "south"] });
    await plan(built);
    const version = await versionOf(built);
    await expect(abandon(built, version, world.people.desk)).rejects.toMatchObject(refused("not-permitted"));
    await abandon(built, version);
    await inScope(laboratory, async (tx) => {
      const run = await tx.run.findUniqueOrThrow({ where: { id: built.run.id } });
      expect(run.state).toBe("abandoned");
      const sensors = await tx.sensor.findMany({ where: { id: { in: built.sensors.map(({ id }) => id) } } });
      expect(sensors.map(({ state }) => state)).toEqual(["received", "received"]);
      expect(await tx.result.count({ where: { runId: built.run.id } })).toBe(4);
      const custody = await tx.custodyEvent.findMany({ where: { runId: built.run.id } });
      expect(custody.map(({ kind }) => kind)).toEqual(["from-furnace", "from-furnace"]);
    });
    await expect(abandon(built, version + 1)).rejects.toMatchObject(refused("wrong-state"));
  });

  it("is not one that was handed over", async () => {
    const built = await buildRun(world, { owners: ["north"] });
    await expect(abandon(built, await versionOf(built))).rejects.toMatchObject(refused("wrong-state"));
  });
});
