import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { execute } from "@/lib/operations/execute";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { typeReadings } from "@/lib/operations/run/type-readings";
import { endScopeLine } from "@/lib/operations/scope/end-line";
import { recordScopeLine } from "@/lib/operations/scope/record-line";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";
import { createS5Run, s5Readings, s5Window } from "../../support/s5-run";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const later = () => new Date("2026-10-16T08:00:00Z");
const line = {
  typeLetter: "N",
  fromCelsius: 300,
  toCelsius: 1100,
  capability: { kind: "proportional", constantCelsius: 0.5, perCelsius: 0.002 },
  validFrom: "2026-01-01",
  source: "Schedule 1 of 2026, line 3 (invented)",
} as const;
const record = (change: object = {}, clock = benchClock, actor = bench.manager) =>
  execute(recordScopeLine, actor, { ...line, ...change }, clock);
const readEvidence = (run: string) => inLaboratory(async (tx) => (await loadEvidence(tx, run))?.evidence);

const evaluated = async (run: string) => {
  const startedAt = "2026-10-15T06:00:00Z";
  await execute(
    typeReadings,
    bench.technician,
    { run, startedAt, first: s5Readings, second: s5Readings },
    benchClock,
  );
  const { fromSeconds, toSeconds } = s5Window;
  await execute(acceptWindow, bench.technician, { run, setpoint: 1, fromSeconds, toSeconds }, benchClock);
  const { evaluation } = await execute(evaluateRun, bench.technician, { run }, benchClock);
  return evaluation.points[0];
};

describe("the laboratory's scope", () => {
  let lineId: string;

  it("is not stated while nothing is recorded", async () => {
    expect(await readEvidence(await createS5Run(bench, "1"))).not.toHaveProperty("scope");
  });

  it("is recorded line by line by the quality manager, and told", async () => {
    for (const actor of [bench.technician, bench.signatory, bench.frontDesk])
      expect((await refusalOf(record({}, benchClock, actor))).code).toBe("not-permitted");
    lineId = (await record()).id;
    expect((await auditSentences()).at(-1)).toBe(
      "scope.line-recorded: recorded the capability of type N from 300 to 1100 °C, 0.5 °C + 0.002 · |t|, in force from 2026-01-01",
    );
  });

  it("refuses a line over another, and a capability that does not hold, and stores nothing", async () => {
    expect((await refusalOf(record({ fromCelsius: 1000, toCelsius: 1200 }))).fields).toHaveProperty(
      "fromCelsius",
    );
    const table = { kind: "table", points: [300, 900].map((celsius) => ({ celsius, expandedCelsius: 1 })) };
    expect((await refusalOf(record({ typeLetter: "K", capability: table }))).fields).toHaveProperty([
      "capability.points",
    ]);
    expect(await inLaboratory((tx) => tx.scopeLine.count())).toBe(1);
  });

  it("raises U of a run made under it to the capability at the point, and says where it stands", async () => {
    const point = await evaluated(await createS5Run(bench, "2"));
    if (point?.state !== "measured") throw new Error("not measured");
    expect(point.scope).toEqual({
      state: "inside",
      capabilityCelsius: 2.5,
      isRaised: true,
      source: line.source,
    });
    expect(point.expandedCelsius).toBeLessThan(2.5);
    expect(point.printed.expandedCelsius).toBe("2.5");
  });

  it("is ended from today on, once, as it was seen; what was measured under it stays", async () => {
    const end = (change: object = {}, actor = bench.manager) =>
      execute(endScopeLine, actor, { id: lineId, version: 1, lastDay: "2026-10-16", ...change }, later);
    const run = await inLaboratory((tx) => tx.run.findFirstOrThrow({ orderBy: { number: "desc" } }));
    const was = await readEvidence(run.number);
    expect((await refusalOf(end({}, bench.technician))).code).toBe("not-permitted");
    expect((await refusalOf(end({ lastDay: "2026-10-15" }))).fields).toHaveProperty("lastDay");
    expect((await refusalOf(end({ version: 2 }))).code).toBe("changed-meanwhile");
    await end();
    expect((await refusalOf(end({ version: 2 }))).code).toBe("wrong-state");
    expect((await auditSentences()).at(-1)).toBe(
      "scope.line-ended: ended the capability of type N from 300 to 1100 °C with 2026-10-16",
    );
    const wider = { capability: { kind: "constant", expandedCelsius: 9 } };
    await record({ ...wider, validFrom: "2026-10-17" }, later);
    // In force on the day of the run, but recorded after it was made.
    await record({ ...wider, typeLetter: "K" }, later);
    expect(await readEvidence(run.number)).toEqual(was);
  });
});
