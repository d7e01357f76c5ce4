import { afterAll, beforeAll, expect, it } from "vitest";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { execute } from "@/lib/operations/execute";
import { createRun } from "@/lib/operations/run/create";
import { stateBuild } from "@/lib/operations/sensor/state-build";
import { sensorView } from "@/lib/views/sensor/sensor";
import { fullRunInput, gateClock } from "../../support/full-run";
import { gateOf, passGate } from "../../support/pass-gate";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

it("a sensor too short for the best uniformity passes with a reason, and its results leave the scope", async () => {
  const input = await fullRunInput(bench);
  const { number: run } = await execute(createRun, bench.technician, input, benchClock);
  const tag = input.places.flatMap(({ item }) => (item.kind === "sensor" ? [item.tag] : []))[0]!;
  const { version } = await sensorView(bench.technician, tag);
  await execute(
    stateBuild,
    bench.technician,
    { tag, version, lengthMillimetre: "300", reason: "length measured" },
    gateClock,
  );
  const before = (await gateOf(run, gateClock)).headings
    .flatMap(({ rows }) => rows)
    .find(({ code }) => code === "short-sensor");
  expect(before).toMatchObject({ severity: "overridable", subjects: [tag] });
  expect(before?.reason).toMatch(/300 mm long and cannot reach the best uniformity at 400 mm/);
  await passGate(bench, run, gateClock);
  const loaded = await inLaboratory((tx) => loadEvidence(tx, run));
  expect(
    loaded?.evidence.sensors.filter(({ outsideScope }) => outsideScope !== undefined).map(({ id }) => id),
  ).toEqual([tag]);
});
