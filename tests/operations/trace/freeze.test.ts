import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { rederiveChains } from "@/lib/commands/rederive/chains";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { resultsStandingOn } from "@/lib/data/sql/results-standing-on";
import { freezeChain } from "@/lib/data/trace/freeze-chain";
import { readChain } from "@/lib/data/trace/read-chain";
import { findBreaks } from "@/lib/domain/trace/find-breaks";
import { execute } from "@/lib/operations/execute";
import { freezeMissingChains } from "@/lib/operations/trace/freeze-missing";
import { tracePageView } from "@/lib/views/trace-page";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signClock, signRun } from "../../support/sign-run";
import { signedWithWorkingStandard } from "../../support/working-standard";

const laboratory = { kind: "laboratory" } as const;
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

const signed = async (owners: readonly ("north" | "south")[]) => {
  const built = await buildRun(world, { owners });
  const certificates = await signRun(world.people.signatory, built);
  return { built, certificates };
};
const resultIds = (sensorId: string) =>
  inScope(laboratory, async (tx) =>
    (await tx.result.findMany({ where: { sensorId }, orderBy: { id: "asc" } })).map(({ id }) => id),
  );
const chainOf = (ids: readonly string[]) => inScope(laboratory, (tx) => readChain(tx, "result", ids));
const counts = () =>
  inScope(laboratory, async (tx) => [await tx.traceNode.count(), await tx.traceEdge.count()]);

describe("sign-off", () => {
  it("freezes each result with its run, standards, calibrations and their ends", async () => {
    const { built } = await signed(["north"]);
    const [first] = await resultIds(built.sensors[0]!.id);
    const chain = await chainOf([first!]);
    expect(chain.frozenAt).toEqual(signClock());
    expect(chain.nodes.map(({ kind }) => kind).filter((kind) => kind === "result" || kind === "run")).toEqual(
      ["result", "run"],
    );
    const titles = (kind: string) =>
      chain.nodes
        .filter((node) => node.kind === kind)
        .map(({ title }) => title)
        .sort();
    expect(titles("standard")).toEqual(["J-1", "R-S1", "R-S2", "V-1", "X-1"]);
    expect(titles("calibration")).toEqual(["CAL-J-1", "CAL-R-S1", "CAL-R-S2", "CAL-V-1", "CAL-X-1"]);
    const use = chain.edges.find(
      ({ role, certificate }) => role === "reference" && certificate === "CAL-R-S1",
    );
    expect(use).toMatchObject({
      issuer: "Invented National Institute",
      route: "nmi",
      performedOn: "2026-01-10",
      validUntil: "2027-01-10",
      expanded: 0.3,
      unit: "°C",
      coverageFactor: 2,
    });
    expect(findBreaks(chain, [`result ${first}`])).toEqual([]);
  });

  it("freezes what two certificates share once, and again nothing", async () => {
    const { built, certificates } = await signed(["north", "south"]);
    const both = await chainOf([
      ...(await resultIds(built.sensors[0]!.id)),
      ...(await resultIds(built.sensors[1]!.id)),
    ]);
    expect(both.nodes.filter(({ kind }) => kind === "result")).toHaveLength(4);
    expect(both.nodes.filter(({ kind }) => kind === "run")).toHaveLength(2);
    expect(both.nodes.filter(({ kind }) => kind === "standard")).toHaveLength(5);
    const before = await counts();
    for (const { id } of certificates)
      expect(await inScope(laboratory, (tx) => freezeChain(tx, id, new Date("2026-04-01")))).toBe(0);
    expect(await counts()).toEqual(before);
  });

  it("keeps the chain byte for byte when its reference is calibrated again", async () => {
    const { built } = await signed(["north"]);
    const ids = await resultIds(built.sensors[0]!.id);
    const before = JSON.stringify(await chainOf(ids));
    const [reference] = world.references;
    const used = await inScope(laboratory, async (tx) => {
      const earlier = await tx.calibration.findFirstOrThrow({ where: { equipmentId: reference.id } });
      const { id: _id, ...rest } = earlier;
      await tx.calibration.create({
        data: {
          ...rest,
          certificate: "CAL-LATER",
          performedOn: new Date("2026-03-04"),
          dueOn: new Date("2027-03-04"),
        },
      });
      return earlier.id;
    });
    expect(JSON.stringify(await chainOf(ids))).toBe(before);
    const rows = await inScope(laboratory, (tx) =>
      resultsStandingOn(tx, "standard", [`${reference.id}/${used}`], { limit: 100, offset: 0 }),
    );
    expect(rows.map(({ recordId }) => recordId)).toEqual(expect.arrayContaining([...ids]));
    expect(rows).toHaveLength(rows[0]!.count);
  });
});

describe("certificates signed before chains were kept", () => {
  const system = { kind: "system", name: "start" } as const;
  const later = () => new Date("2026-06-01T08:00:00Z");

  it("have theirs frozen from the same records, and say that it was later", async () => {
    const { built, certificates } = await signed(["north"]);
    const ids = await resultIds(built.sensors[0]!.id);
    const { frozenAt: _signed, ...before } = await chainOf(ids);
    // As if it had been signed before there was a graph: only a superuser can take it away.
    const admin = await connect(database.adminUrl);
    await admin.query(
      "ALTER TABLE trace_edge DISABLE TRIGGER ALL; ALTER TABLE trace_node DISABLE TRIGGER ALL",
    );
    await admin.query("DELETE FROM trace_edge");
    await admin.query("DELETE FROM trace_node");
    await admin.query("ALTER TABLE trace_edge ENABLE ALWAYS TRIGGER guard_trace_edge");
    await admin.end();
    const number = certificates[0]!.number;
    const page = () => tracePageView(world.people.technician, number, { celsius: null, on: "2026-06-02" });
    const bare = await page();
    expect([bare.frozenAt, bare.isFrozenLater, bare.breaks]).toEqual([null, false, []]);
    const { certificates: frozen } = await execute(freezeMissingChains, system, {}, later);
    expect(frozen).toContain(number);
    const { frozenAt, ...after } = await chainOf(ids);
    expect(after).toEqual(before);
    expect(frozenAt).toEqual(later());
    expect((await page()).isFrozenLater).toBe(true);
    expect(await rederiveChains()).toMatch(/^\d+ chains composed anew$/);
  });

  it("are refused where none is left, and to people", async () => {
    await expect(execute(freezeMissingChains, system, {}, later)).rejects.toMatchObject({
      refusal: { code: "rule" },
    });
    await expect(execute(freezeMissingChains, world.people.quality, {}, later)).rejects.toMatchObject({
      refusal: { code: "not-permitted" },
    });
  });
});

it("goes on through a working standard whose own certificate was frozen before", async () => {
  const { own, certificate } = await signedWithWorkingStandard(world);
  const ids = await inScope(laboratory, async (tx) => {
    const row = await tx.certificate.findUniqueOrThrow({ where: { id: certificate.id } });
    return (await tx.result.findMany({ where: { evaluationId: row.evaluationId } })).map(({ id }) => id);
  });
  const chain = await chainOf(ids);
  const results = chain.nodes.filter(({ kind }) => kind === "result");
  expect(new Set(results.map(({ facts }) => facts.certificate))).toEqual(
    new Set([own.number, certificate.number]),
  );
  expect(
    findBreaks(
      chain,
      ids.map((id) => `result ${id}`),
    ),
  ).toEqual([]);
  expect(await rederiveChains()).toContain("composed anew");
});
