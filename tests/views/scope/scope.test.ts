import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { capabilityPlot } from "@/lib/drawing/capability-plot";
import { execute } from "@/lib/operations/execute";
import { endScopeLine } from "@/lib/operations/scope/end-line";
import { recordScopeLine } from "@/lib/operations/scope/record-line";
import { scopeView } from "@/lib/views/scope";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { refusalOf } from "../../support/front-desk";

let database: TestDatabase;
let world: World;
const clock = () => new Date("2026-06-01T08:00:00Z");

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const view = (day: string, actor = world.people.desk) => scopeView(actor, day, clock());

describe("the scope's page", () => {
  it("says that nothing is claimed while no line is recorded", async () => {
    expect(await view("2026-06-01")).toMatchObject({ types: [], lines: [], isToday: true, mayRecord: false });
    expect((await refusalOf(scopeView(world.people.north, "2026-06-01", clock()))).code).toBe(
      "not-permitted",
    );
  });

  it("shows the lines in force on any day, as drawing and as table", async () => {
    const points = [
      { celsius: 250, expandedCelsius: 0.6 },
      { celsius: 430, expandedCelsius: 0.9 },
      { celsius: 600, expandedCelsius: 1.4 },
    ];
    const line = {
      typeLetter: "K",
      fromCelsius: 250,
      toCelsius: 600,
      source: "schedule A, line 1 (invented)",
    } as const;
    const { id } = await execute(
      recordScopeLine,
      world.people.quality,
      { ...line, capability: { kind: "table", points }, validFrom: "2026-01-01" },
      clock,
    );
    await execute(endScopeLine, world.people.quality, { id, version: 1, lastDay: "2026-06-30" }, clock);
    const constant = { kind: "constant", expandedCelsius: 2 } as const;
    const next = { ...line, capability: constant, validFrom: "2026-07-01" };
    await execute(recordScopeLine, world.people.quality, next, clock);

    const june = await view("2026-06-30", world.people.quality);
    expect(june.mayRecord).toBe(true);
    expect(june.lines.map(({ standing }) => standing)).toEqual(["in-force", "to-come"]);
    const [type] = june.types;
    expect(type?.plot.rows.map(({ celsius, expandedCelsius }) => [celsius, expandedCelsius])).toEqual([
      ["250", "0.600"],
      ["300", "0.683"],
      ["400", "0.850"],
      ["500", "1.106"],
      ["600", "1.400"],
    ]);
    // The table's own corner is drawn, not only even steps.
    expect(type?.plot.lines[0]?.points).toContainEqual({ celsius: 430, expandedCelsius: 0.9 });
    const drawing = capabilityPlot(type!.plot, 360);
    expect(drawing.table.rows).toHaveLength(5);
    expect(drawing.shapes.filter(({ kind }) => kind === "path")).toHaveLength(1);

    const july = await view("2026-07-01");
    expect(july.isToday).toBe(false);
    expect(july.types[0]?.plot.rows.every(({ expandedCelsius }) => expandedCelsius === "2.000")).toBe(true);
    expect(july.lines.map(({ standing }) => standing)).toEqual(["ended", "in-force"]);
    expect((await view("2025-12-31")).types).toEqual([]);
  });
});
