import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { createRun } from "@/lib/operations/run/create";
import { runGateView } from "@/lib/views/run/run-gate";
import { refusalOf } from "../../support/front-desk";
import { fullRunInput, gateClock } from "../../support/full-run";
import { checkBench, passGate } from "../../support/pass-gate";
import { benchClock, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let run: string;
beforeAll(async () => {
  bench = await openRunBench();
  run = (await execute(createRun, bench.technician, await fullRunInput(bench), benchClock)).number;
});
afterAll(() => bench.close());

const gate = (actor = bench.technician) => runGateView(actor, run, gateClock());

describe("the gate's page", () => {
  it("is the laboratory's own affair", async () => {
    expect((await refusalOf(gate(bench.northern.actor))).code).toBe("not-permitted");
    expect((await refusalOf(runGateView(bench.technician, "R-1", gateClock()))).code).toBe("not-found");
  });

  it("says under at most eight headings what stands in the way, and counts it", async () => {
    const view = await gate();
    expect(view.headings.length).toBeLessThanOrEqual(8);
    expect(view).toMatchObject({ verdict: "needs-reasons", isBefore: true, passed: null });
    const rows = view.headings.flatMap((one) => one.rows);
    expect(view.counts.reasonsLacking).toBe(
      rows.filter(({ severity, given }) => severity === "overridable" && given === null).length,
    );
    expect(view.counts.toMend).toBe(0);
    expect(view.bench.channels.map(({ microvolt }) => microvolt)).toEqual(
      view.bench.channels.map(() => null),
    );
    expect(view.head.thread.map(({ label }) => label)).toContain("Gate passed");
  });

  it("offers a reason only to whom the policy names", async () => {
    const of = async (actor: RunBench["technician"], code: string) =>
      (await gate(actor)).headings.flatMap((one) => one.rows).find((row) => row.code === code)?.override;
    expect((await of(bench.technician, "tips-warmed"))?.mayI).toBe(true);
    expect(await of(bench.technician, "warm-up")).toMatchObject({
      mayI: false,
      by: "signatory or quality manager",
    });
    expect((await of(bench.signatory, "warm-up"))?.mayI).toBe(true);
  });

  it("shows what is recorded today, and nothing of yesterday", async () => {
    await checkBench(bench, run, gateClock);
    expect((await gate()).bench).toMatchObject({ warmUpHours: 2, shortedZeroMicrovolt: 0.1 });
    expect((await runGateView(bench.technician, run, benchClock())).bench.warmUpHours).toBeNull();
  });

  it("shows the gate as it was passed afterwards, and offers its reasons to the next run as last time", async () => {
    await passGate(bench, run, gateClock);
    const { passed } = await gate();
    expect(passed).toMatchObject({ by: "Tom Bench", at: gateClock().toISOString() });
    expect(passed?.rows.find(({ code }) => code === "tips-warmed")).toMatchObject({
      given: "set aside for this test",
      reachesCertificate: true,
    });
  });
});
