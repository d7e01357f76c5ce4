import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { newRunView } from "@/lib/views/run/new-run";
import { runChannelsView } from "@/lib/views/run/run-channels";
import { runLoadView } from "@/lib/views/run/run-load";
import { runReadingsView } from "@/lib/views/run/run-readings";
import { runResultsView } from "@/lib/views/run/run-results";
import { runWindowsView } from "@/lib/views/run/run-windows";
import { runsView } from "@/lib/views/run/runs";
import { refusalOf } from "../../support/front-desk";
import { createFullRun, fullRunInput, uploadSeed, warmTips } from "../../support/full-run";
import { benchClock, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let run: string;
beforeAll(async () => {
  bench = await openRunBench();
  run = await createFullRun(bench);
});
afterAll(() => bench.close());

describe("the pages of a run", () => {
  it("are the laboratory's alone: a customer is not told that there is a run", async () => {
    const customer = bench.northern.actor;
    const views = [
      runsView(customer, {}),
      runLoadView(customer, run),
      runReadingsView(customer, run),
      runWindowsView(customer, run),
      runChannelsView(customer, run, undefined),
      runResultsView(customer, run),
      newRunView(customer, benchClock()),
    ];
    for (const view of views) expect((await refusalOf(view)).code).toBe("not-permitted");
    expect((await refusalOf(runWindowsView(bench.technician, "R-1"))).code).toBe("not-found");
  });

  it("say where it stands and what is next", async () => {
    const before = await runWindowsView(bench.technician, run);
    expect(before.head.next).toMatch(/Warm each tip/);
    expect(before.head.thread.find(({ state }) => state === "now")?.label).toBe("Tips warmed");
    expect([before.now, before.current?.celsius]).toEqual([null, 300]);
    await warmTips(bench, run, ["1"]);
    const load = await runLoadView(bench.technician, run);
    expect(load.places.map(({ place, tipState }) => [place, tipState]).slice(0, 2)).toEqual([
      ["1", "passed"],
      ["2", "missing"],
    ]);
    await uploadSeed(bench, run, 1);
    const after = await runWindowsView(bench.technician, run);
    expect(after.head.next).toMatch(/Accept a stability window/);
    expect(after.head.thread.find(({ state }) => state === "now")?.label).toBe("Windows");
    expect(after.current?.celsius).toBe(1100);
    expect(Math.abs((after.now?.celsius ?? 0) - 1100)).toBeLessThan(3);
    expect(after.setpoints.every(({ proposal }) => proposal.kind === "proposed")).toBe(true);
  });

  it("show each channel as it was read, or one of them", async () => {
    const all = await runChannelsView(bench.technician, run, undefined);
    expect(all.channels.every(({ seconds }) => seconds.length > 1900)).toBe(true);
    const one = await runChannelsView(bench.technician, run, "103");
    expect(one.channels.filter(({ seconds }) => seconds.length > 0).map(({ channel }) => channel)).toEqual([
      "103",
    ]);
    expect((await runChannelsView(bench.technician, run, "999")).chosen).toBeUndefined();
    const { blocks } = await runReadingsView(bench.technician, run);
    expect(blocks).toMatchObject([
      { sequence: 1, source: "file", fileName: "seed-1.csv", receivedBy: "Tom Bench" },
    ]);
  });

  it("show the results of the last evaluation, and that it is outdated once something changed", async () => {
    const { setpoints } = await runWindowsView(bench.technician, run);
    for (const { position, proposal } of setpoints) {
      if (proposal.kind === "none") throw new Error(proposal.reason);
      const { fromSeconds, toSeconds } = proposal.window;
      await execute(
        acceptWindow,
        bench.technician,
        { run, setpoint: position, fromSeconds, toSeconds },
        benchClock,
      );
    }
    await execute(evaluateRun, bench.technician, { run }, benchClock);
    const view = await runResultsView(bench.technician, run);
    expect(view.sensors).toHaveLength(6);
    expect(view.sensors.every(({ points }) => points.every((point) => point?.state === "measured"))).toBe(
      true,
    );
    expect(view.head.progress.evaluation).toBe("current");
    expect(view.missingTips).toHaveLength(7);
    await warmTips(bench, run, ["2"]);
    expect((await runResultsView(bench.technician, run)).head.progress.evaluation).toBe("outdated");
  });

  it("offer for the next run only what waits, with what each order agreed", async () => {
    await fullRunInput(bench);
    const view = await newRunView(bench.technician, benchClock());
    expect(view.waiting.map(({ type }) => type).toSorted()).toEqual(["K", "K", "N", "N", "S", "S"]);
    expect(view.waiting[0]).toMatchObject({ setpointsCelsius: [300, 500, 700, 900, 1100] });
    expect(view.references.map(({ tag, due }) => [tag, due])).toEqual([
      ["REF-S-01", "in-date"],
      ["REF-S-02", "in-date"],
    ]);
    expect((await runsView(bench.signatory, {})).runs.map(({ number }) => number)).toEqual([run]);
    expect(await runsView(bench.signatory, { show: "abandoned" })).toMatchObject({ runs: [], isAny: true });
  });
});
