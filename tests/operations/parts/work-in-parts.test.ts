import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { loadTraceParts, tracePositions } from "@/lib/data/trace/load-trace-parts";
import { readChain } from "@/lib/data/trace/read-chain";
import type { Actor } from "@/lib/domain/staff/actor";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { letSensorGo } from "@/lib/operations/review/let-sensor-go";
import { annealSensor } from "@/lib/operations/sensor/anneal";
import { orderPartsView } from "@/lib/views/order/parts";
import { reviewRunView } from "@/lib/views/review-run";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { contentOf, rederived, runState, shift, stateOf } from "../../support/parts-seen";
import { signClock, signOffInput } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
const laboratory = { kind: "laboratory" } as const;
const laterRun = new Date("2026-03-04T08:00:00Z");

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
const letGo = (
  built: Built,
  index: number,
  results: "kept" | "put-back",
  actor: Actor = world.people.signatory,
) =>
  execute(
    letSensorGo,
    actor,
    {
      runId: built.run.id,
      evaluationId: built.evaluation.id,
      sensorId: built.sensors[index]!.id,
      results,
      reason: "Invented reason, for the record.",
    },
    signClock,
  );
const sign = async (built: Built, sensors = built.sensors) =>
  (await execute(signOff, world.people.signatory, await signOffInput(built, sensors), signClock))
    .certificates;
const repeatRow = (earlier: Built, later: Built, countingRule: string) =>
  inScope(laboratory, (tx) =>
    tx.repeatMeasurement.create({
      data: {
        sensorId: later.sensors[0]!.id,
        customerId: later.sensors[0]!.customerId,
        earlierRunId: earlier.run.id,
        runId: later.run.id,
        countingRule,
        reason: "A slip at 600 °C, invented.",
        authorisedById: world.people.quality.personId,
        authorisedAt: laterRun,
      },
    }),
  );

describe("an order delivered in parts", () => {
  it("puts one sensor back, signs the others off, and closes the run", async () => {
    const built = await buildRun(world, { owners: ["north", "north", "north"] });
    expect(await letGo(built, 0, "put-back")).toMatchObject({ results: "put-back" });
    expect(await stateOf(built.sensors[0]!.id)).toBe("received");
    await expect(letGo(built, 0, "kept")).rejects.toMatchObject(refused("wrong-state"));
    await sign(built, built.sensors.slice(1));
    expect(await runState(built.run.id)).toBe("signed-off");
    const order = await inScope(laboratory, (tx) =>
      tx.order.findUniqueOrThrow({ where: { id: built.orders[0]!.id } }),
    );
    expect(order.state).toBe("accepted");
    const [line] = await orderPartsView(world.people.desk, order.number);
    expect(line!.sensors.map(({ rows }) => rows[0]!.cells[0]!.state)).toEqual([
      "set-aside",
      "reported",
      "reported",
    ]);
    expect(line!.sensors[0]!.next).toMatch(/Plan another run/);
  });

  it("is the signatory's to decide, and no certificate comes from a review that a sensor left", async () => {
    const built = await buildRun(world, { owners: ["north", "north"] });
    const input = await signOffInput(built);
    await expect(letGo(built, 0, "put-back", world.people.desk)).rejects.toMatchObject(
      refused("not-permitted"),
    );
    await letGo(built, 0, "put-back");
    // In review again, with another run: what this one has is not signed all the same.
    await buildRun(world, { owners: ["north"], again: [built.sensors[0]!], createdAt: laterRun });
    await expect(execute(signOff, world.people.signatory, input, signClock)).rejects.toMatchObject(
      refused("wrong-state"),
    );
    expect(await stateOf(built.sensors[1]!.id)).toBe("in-review");
  });

  it("reports setpoints of two runs on one certificate, each under its run", async () => {
    const first = await buildRun(world, { owners: ["north"], setpoints: [{ typed: "600", celsius: 600 }] });
    await inScope(laboratory, (tx) =>
      tx.orderSetpoint.create({
        data: {
          orderLineId: first.sensors[0]!.orderLineId,
          customerId: first.sensors[0]!.customerId,
          position: 2,
          typed: "1000",
          celsius: 1000,
        },
      }),
    );
    await letGo(first, 0, "kept");
    const second = await buildRun(world, {
      owners: ["north"],
      again: first.sensors,
      createdAt: laterRun,
      setpoints: [{ typed: "1000", celsius: 1000 }],
    });
    const [certificate] = await sign(second);
    const content = await contentOf(certificate!.id);
    expect(content.sets?.map(({ run, rows }) => [run.number, rows.map(({ setpoint }) => setpoint)])).toEqual([
      [first.run.number, ["600 °C"]],
      [second.run.number, ["1000 °C"]],
    ]);
    expect(content.deviations.join(" ")).not.toMatch(/not part of this run/);
    expect(await rederived()).toMatch(/composed anew/);
  });
});

describe("a repeat", () => {
  const measuredTwice = async (rule: string, difference: number) => {
    const first = await buildRun(world, { owners: ["south"] });
    await letGo(first, 0, "put-back");
    const second = await buildRun(world, {
      owners: ["south"],
      again: first.sensors,
      createdAt: laterRun,
      change: shift(difference),
    });
    await repeatRow(first, second, rule);
    return { first, second };
  };

  it("reports the later one where the rule says so, and says that there were two", async () => {
    const { first, second } = await measuredTwice("later-counts", 0.2);
    const [certificate] = await sign(second);
    const content = await contentOf(certificate!.id);
    expect(content.run.number).toBe(second.run.number);
    expect(content.repeats?.[0]).toContain(`in run ${first.run.number} and in run ${second.run.number}`);
  });

  it("reports the earlier one where they agree; the later stays on record, unreported", async () => {
    const { first, second } = await measuredTwice("earlier-counts-if-they-agree", 0.2);
    const [certificate] = await sign(second);
    const content = await contentOf(certificate!.id);
    expect(content.run.number).toBe(first.run.number);
    expect(content.evidence.inputsDigest).toBe(Buffer.from(first.evaluation.inputsDigest).toString("hex"));
    expect(content.repeats?.[0]).toMatch(/they agree|agree within U/i);
    expect(await stateOf(first.sensors[0]!.id)).toBe("issued");
    expect(await runState(second.run.id)).toBe("signed-off");
    const decisions = await inScope(laboratory, (tx) =>
      tx.reviewDecision.findMany({ where: { sensorId: first.sensors[0]!.id }, orderBy: { id: "asc" } }),
    );
    expect(decisions.map(({ runId, decision }) => [runId === first.run.id, decision])).toEqual([
      [true, "put-back"],
      [true, "signed-off"],
      [false, "put-back"],
    ]);
    expect(await rederived()).toMatch(/composed anew/);
  });

  it("reports the later one with a finding for the signatory where they do not agree", async () => {
    const { first, second } = await measuredTwice("earlier-counts-if-they-agree", 4);
    const page = await reviewRunView(world.people.signatory, second.run.number);
    expect(page.sensors[0]!.findings.join(" ")).toMatch(`does not confirm run ${first.run.number}`);
    const [certificate] = await sign(second);
    const content = await contentOf(certificate!.id);
    expect(content.run.number).toBe(second.run.number);
    expect(content.repeats?.[0]).toMatch(/so the later one is reported/);
  });
});

describe("as received and after annealing", () => {
  const anneal = (tag: string, change = {}) =>
    execute(
      annealSensor,
      world.people.technician,
      {
        sensor: tag,
        celsius: "1100",
        hours: "2",
        manner: "in a tube furnace in air, cooled in it",
        performedOn: "2026-03-03",
        ...change,
      },
      signClock,
    );

  it("needs both sets before sign-off, and puts them on one certificate with the change", async () => {
    const first = await buildRun(world, {
      owners: ["north"],
      lineOptions: { sets: "both", anneal: { celsius: 1100, hours: 2 } },
    });
    const [sensor] = first.sensors;
    await expect(signOffInput(first)).rejects.toMatchObject(refused("rule"));
    expect((await reviewRunView(world.people.signatory, first.run.number)).sensors[0]!.obstacle).toMatch(
      /not measured after annealing yet/,
    );
    await expect(anneal(sensor!.tag)).rejects.toMatchObject(refused("wrong-state"));
    await letGo(first, 0, "kept");
    await anneal(sensor!.tag);
    const second = await buildRun(world, {
      owners: ["north"],
      again: first.sensors,
      createdAt: laterRun,
      setKind: "after-anneal",
      change: shift(1.2),
    });
    const [certificate] = await sign(second);
    const content = await contentOf(certificate!.id);
    expect(content.sets?.map(({ kind }) => kind)).toEqual(["as-received", "after-anneal"]);
    expect(content.rows).toEqual(content.sets?.[1]?.rows);
    expect(content.changes?.[0]?.rows.map(({ changeCelsius }) => changeCelsius)).toEqual(["1.2", "1.2"]);
    expect(content.adjustment).toMatch(/Annealed by this laboratory on 2026-03-03 at 1100 °C for 2 h/);
    await inScope(laboratory, async (tx) => {
      expect(await tracePositions(tx, certificate!.id)).toEqual([1, 2]);
      for (const position of [1, 2]) {
        const { parts } = await loadTraceParts(tx, certificate!.id, position);
        const chain = await readChain(
          tx,
          "result",
          parts.results.map(({ id }) => id),
        );
        expect(chain.nodes.filter(({ kind }) => kind === "result")).toHaveLength(2);
      }
    });
    expect(await rederived()).toMatch(/composed anew/);
  });

  it("refuses an annealing nobody ordered, one too early, and one that has not been", async () => {
    const plain = await buildRun(world, { owners: ["north"] });
    await letGo(plain, 0, "put-back");
    await expect(anneal(plain.sensors[0]!.tag)).rejects.toMatchObject(refused("rule"));
    const both = await buildRun(world, { owners: ["north"], lineOptions: { sets: "both" } });
    await letGo(both, 0, "put-back");
    await expect(anneal(both.sensors[0]!.tag)).rejects.toMatchObject(refused("rule"));
    await expect(anneal(both.sensors[0]!.tag, { performedOn: "2026-03-06" })).rejects.toMatchObject({
      refusal: { fields: { performedOn: expect.any(String) } },
    });
    expect(
      await inScope(laboratory, (tx) => tx.sensorAnneal.count({ where: { sensorId: both.sensors[0]!.id } })),
    ).toBe(0);
  });
});
