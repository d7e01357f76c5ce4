import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { execute } from "@/lib/operations/execute";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { submitRun } from "@/lib/operations/run/submit";
import { typeReadings } from "@/lib/operations/run/type-readings";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";
import { createS5Run, s5Readings, s5Window } from "../../support/s5-run";

/**
 * EA-4/02 example S5 as a run of the platform: readings typed twice, sensitivities as published. What S5 does not
 * prove: the references' certificates are not published, so nothing about converting the references' emf.
 */
let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const startedAt = "2026-10-15T06:00:00Z";
const type = (run: string, second = s5Readings) =>
  execute(typeReadings, bench.technician, { run, startedAt, first: s5Readings, second }, benchClock);

const evaluated = async (run: string): Promise<MeasuredPoint> => {
  await type(run);
  const { fromSeconds, toSeconds } = s5Window;
  await execute(acceptWindow, bench.technician, { run, setpoint: 1, fromSeconds, toSeconds }, benchClock);
  const { evaluation } = await execute(evaluateRun, bench.technician, { run }, benchClock);
  const [point] = evaluation.points;
  if (point?.state !== "measured") throw new Error("S5 was not measured");
  return point;
};

describe("EA-4/02 example S5 as a journey", () => {
  let twoDigits: string;

  it("refuses entries that differ, at the figure that differs, and stores nothing", async () => {
    twoDigits = await createS5Run(bench, "2");
    const second = s5Readings.map((reading, index) =>
      index === 4 ? { ...reading, microvolts: 10504.5 } : reading,
    );
    const refusal = await refusalOf(type(twoDigits, second));
    expect(refusal.fields).toEqual({
      "second.4.microvolts": `The entries differ: ${s5Readings[4]!.microvolts} and 10504.5. Look at the record and correct the wrong one.`,
    });
    expect((await refusalOf(type(twoDigits, s5Readings.slice(1)))).fields).toHaveProperty("second.0.channel");
    expect(await inLaboratory((tx) => tx.scanBlock.count())).toBe(0);
  });

  it("gives the published result with one digit of U, and the readings are marked as typed", async () => {
    const run = await createS5Run(bench, "1");
    const point = await evaluated(run);
    expect(point.referenceCelsius).toBeCloseTo(1000.5, 2);
    expect(Math.abs(point.temperatureBudget.combined - 0.6409)).toBeLessThan(0.0002);
    expect(point.carriedCelsius).toBeCloseTo(-0.5, 2);
    expect(Math.abs(point.emfAtNominalMicrovolt - 36228.77)).toBeLessThan(0.01);
    expect(Math.abs(point.combinedMicrovolt - 24.96)).toBeLessThan(0.01);
    expect(point.printed.emfMicrovolt).toBe("36\u202f230");
    expect(point.printed.expandedMicrovolt).toBe("50");
    const [block] = await inLaboratory((tx) => tx.scanBlock.findMany());
    expect(block).toMatchObject({ source: "typed", readingCount: 12, fileName: null });
    expect((await auditSentences()).find((one) => one.includes("typed 12 readings"))).toContain(run);
    const { version } = await inLaboratory((tx) => tx.run.findUniqueOrThrow({ where: { number: run } }));
    await execute(
      submitRun,
      bench.technician,
      { run, version, tipCheckReason: "The example does not publish a tip check." },
      benchClock,
    );
    expect((await auditSentences()).at(-1)).toMatch(/tips not all checked: The example/);
  });

  it("gives 36 229 ± 50 with two digits of U", async () => {
    const { printed } = await evaluated(twoDigits);
    expect([printed.emfMicrovolt, printed.expandedMicrovolt]).toEqual(["36\u202f229", "50"]);
  });
});
