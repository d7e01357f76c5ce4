import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { countStatements } from "@/lib/commands/bench/count-statements";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { type ChainTree, treeLines } from "@/lib/domain/trace/chain-tree";
import { tracePageView } from "@/lib/views/trace-page";
import { traceStandardView } from "@/lib/views/trace-standard";
import { buildRun } from "../support/build-run";
import { buildWorld, type World } from "../support/build-world";
import { codeOf } from "../support/code-of";
import { type TestDatabase, testDatabase } from "../support/database";
import { inServiceRow, suspectRow } from "../support/in-service";
import { signRun } from "../support/sign-run";
import { signedWithWorkingStandard } from "../support/working-standard";

const laboratory = { kind: "laboratory" } as const;
const on = "2026-03-06";
let database: TestDatabase;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  await inScope(laboratory, async (tx) => {
    const calibration = await tx.calibration.findFirstOrThrow({ where: { certificate: "CAL-R-S2" } });
    const parent = { calibrationId: calibration.id, issuer: "Invented National Institute" };
    await tx.calibrationParent.createMany({
      data: [
        {
          ...parent,
          position: 1,
          kind: "laboratory-standard",
          title: "Standard thermocouple",
          identity: "NS-7",
          route: "realisation",
          performedOn: new Date("2025-06-01"),
          validUntil: new Date("2027-06-01"),
          expanded: 0.2,
          unit: "°C",
          coverageFactor: 2,
        },
        {
          ...parent,
          position: 2,
          kind: "fixed-point",
          title: "Copper point",
          route: "realisation",
          expanded: 0.05,
          unit: "°C",
          coverageFactor: 2,
          below: 1,
        },
      ],
    });
  });
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const staff = () => world.people.technician;
const page = (number: string, celsius: number | null = null, day = on) =>
  tracePageView(staff(), number, { celsius, on: day });
const linesOf = (tree: ChainTree | null) => (tree ? treeLines(tree) : []);
const titled = (tree: ChainTree | null, title: string) =>
  linesOf(tree).filter(({ node }) => node.title.startsWith(title));
const signedOne = async () => {
  const built = await buildRun(world, { owners: ["north"] });
  const [certificate] = await signRun(world.people.signatory, built);
  return { built, number: certificate!.number };
};

describe("the chain of a certificate", () => {
  it("is that of its first result, or of the one asked for, each down to an end", async () => {
    const { number } = await signedOne();
    const first = await page(number);
    expect(first.results.map(({ setpoint, isChosen }) => [setpoint, isChosen])).toEqual([
      ["600 °C", true],
      ["1000 °C", false],
    ]);
    expect(first.breaks).toEqual([]);
    expect(first.tree?.node).toMatchObject({ kind: "result", facts: { celsius: 600 } });
    expect((await page(number, 1000)).tree?.node.facts.celsius).toBe(1000);
    expect((await page(number, 99)).tree?.node.facts.celsius).toBe(600);
    const leaves = linesOf(first.tree).filter(({ children, isAgain }) => children.length === 0 && !isAgain);
    expect(leaves.length).toBeGreaterThan(3);
    expect(leaves.every(({ isEnd }) => isEnd)).toBe(true);
    expect([first.frozenAt, first.isFrozenLater]).toEqual(["2026-03-05T10:00:00.000Z", false]);
  });

  it("says the certificate, U at the point and days of each step, and goes through what a certificate names", async () => {
    const { number } = await signedOne();
    const { tree } = await page(number);
    expect(titled(tree, "R-S2")[0]?.edge).toMatchObject({
      role: "reference",
      certificate: "CAL-R-S2",
      expanded: 0.3,
      atCelsius: 600,
      performedOn: "2026-01-10",
    });
    const [standard] = titled(tree, "Standard thermocouple");
    expect(standard?.edge).toMatchObject({ role: "parent", expanded: 0.2, validUntil: "2027-06-01" });
    expect(standard?.children.map(({ node, isEnd }) => [node.kind, node.title, isEnd])).toEqual([
      ["fixed-point", "Copper point", true],
    ]);
  });

  it("is asked of the database in ten statements at most, from the first page of a laboratory to its last", async () => {
    const { number } = await signedOne();
    await page(number);
    const counted = await countStatements(() => page(number, 1000));
    expect(counted).toBeLessThanOrEqual(10);
    for (let more = 0; more < 3; more += 1) await signedOne();
    expect(await countStatements(() => page(number, 1000))).toBe(counted);
  });

  it("marks the step that brings the most", async () => {
    const { number } = await signedOne();
    const { tree, largest } = await page(number);
    // The fixture's budget: the sensor 0.1 of u², the references 0.06 (the rest is not told).
    expect(largest).toMatchObject({ role: "run", share: 0.1 });
    expect(
      linesOf(tree)
        .filter(({ isLargest }) => isLargest)
        .map(({ node }) => node.kind),
    ).toEqual(["run"]);
    expect(titled(tree, "R-S1")[0]?.share).toBe(0.06);
  });

  it("goes on through a working standard of our own to what that was measured with", async () => {
    const { own, equipment, certificate } = await signedWithWorkingStandard(world);
    const { tree, breaks } = await page(certificate.number);
    expect(breaks).toEqual([]);
    const [standard] = titled(tree, equipment.tag);
    const [calibration] = standard?.children ?? [];
    expect(calibration?.node).toMatchObject({ kind: "calibration", title: own.number });
    // Used at 600 °C, where it was measured: that point, and no other of its certificate.
    expect(calibration?.children.map(({ node, edge }) => [node.kind, edge?.atCelsius])).toEqual([
      ["result", 600],
    ]);
    expect(calibration?.left).toBe(1);
    const run = calibration?.children[0]?.children[0];
    expect(run?.children.map(({ node }) => node.title)).toEqual(expect.arrayContaining(["R-S1", "R-S2"]));
    expect(titled(tree, "Invented National Institute").length).toBeGreaterThan(0);
  });
});

describe("what came later", () => {
  it("raises flags as known on the day asked about, and alters nothing", async () => {
    const { number } = await signedOne();
    const before = await page(number);
    expect(before.later).toEqual([]);
    await inScope(laboratory, async (tx) => {
      const used = await tx.calibration.findFirstOrThrow({ where: { certificate: "CAL-V-1" } });
      await tx.calibration.create({
        data: {
          equipmentId: used.equipmentId,
          certificate: "CAL-V-1-B",
          issuer: used.issuer,
          route: used.route,
          findings: used.findings,
          performedOn: new Date("2026-03-10"),
          dueOn: new Date("2027-03-10"),
          recordedAt: new Date("2026-03-11T08:00:00Z"),
        },
      });
      await tx.calibrationDecision.create({
        data: {
          calibrationId: used.id,
          decision: "rejected",
          checks: "{}",
          reason: "read twice",
          decidedById: world.people.quality.personId,
          decidedAt: new Date("2026-03-12T08:00:00Z"),
        },
      });
      await suspectRow(tx, world.scanner.id, "2026-03-09");
    });
    const flags = async (day: string) =>
      (await page(number, null, day)).later.map(({ tag, text }) => `${tag} ${text}`);
    expect(await flags("2026-03-09")).toEqual(["X-1 is suspect now"]);
    expect(await flags("2026-03-11")).toEqual([
      "V-1 was calibrated again on 2026-03-10 (CAL-V-1-B, not accepted yet): compare the two",
      "X-1 is suspect now",
    ]);
    expect(await flags("2026-03-12")).toEqual([
      "V-1 was calibrated again on 2026-03-10 (CAL-V-1-B, not accepted yet): compare the two",
      "V-1 its calibration CAL-V-1 was rejected on 2026-03-12: see what stands on it",
      "X-1 is suspect now",
    ]);
    expect((await page(number)).tree).toEqual(before.tree);
    await inScope(laboratory, (tx) =>
      inServiceRow(tx, world.scanner.id, world.people.quality.personId, "2026-03-13"),
    );
  });
});

describe("a standard", () => {
  const standard = (id: string, asked: Partial<Parameters<typeof traceStandardView>[2]> = {}) =>
    traceStandardView(staff(), id, { on, calibrationId: null, page: 1, ...asked });

  it("shows every result that stands on it, through a working standard too, and no other", async () => {
    const { equipment, built, own } = await signedWithWorkingStandard(world);
    const reached = await standard(world.references[0].id);
    const certificates = await inScope(laboratory, (tx) =>
      tx.certificate.findMany({ select: { number: true } }),
    );
    // Every certificate of this file rests on R-S1: directly, or through a working standard.
    expect(new Set(reached.results.map(({ certificate }) => certificate))).toEqual(
      new Set(certificates.map(({ number }) => number)),
    );
    expect(reached.count).toBe(reached.results.length);
    const working = await standard(equipment.tag);
    expect(working.count).toBe(2);
    expect(working.results.map(({ run }) => run)).toEqual([built.run.number, built.run.number]);
    expect(working.results.map(({ certificate }) => certificate)).not.toContain(own.number);
  });

  it("shows what it stands on by the calibration in force on the day asked about", async () => {
    const { equipment, own } = await signedWithWorkingStandard(world);
    const then = await standard(equipment.id);
    expect(then.tree?.children.map(({ node }) => node.title)).toEqual([own.number]);
    expect(then.breaks).toEqual([]);
    const before = await standard(equipment.id, { on: "2026-03-01" });
    expect(before.tree?.children).toEqual([]);
    expect(before.breaks.map(({ code }) => code)).toEqual(["no-certificate"]);
    const after = await standard(equipment.id, { on: "2027-04-01" });
    expect(after.breaks.map(({ code }) => code)).toContain("not-in-date");
  });

  it("may be narrowed to one calibration, and answers nobody outside the laboratory", async () => {
    const { equipment } = await signedWithWorkingStandard(world);
    const all = await standard(equipment.id);
    const [calibration] = all.calibrations;
    const narrowed = await standard(equipment.id, { calibrationId: calibration!.id });
    expect(narrowed.calibrations.map(({ isChosen }) => isChosen)).toEqual([true]);
    expect(narrowed.results).toEqual(all.results);
    expect(await codeOf(standard("no-such-tag"))).toBe("not-found");
    const asCustomer = traceStandardView(world.people.north, equipment.id, {
      on,
      calibrationId: null,
      page: 1,
    });
    expect(await codeOf(asCustomer)).toBe("not-permitted");
  });
});
