import { afterAll, beforeAll, expect, it } from "vitest";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { execute } from "@/lib/operations/execute";
import { createRun } from "@/lib/operations/run/create";
import { fullRunInput } from "../../support/full-run";
import { accepted, lineInput, orderInput, received } from "../../support/orders";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

/** Two lines of one order, one sensor each, at the setpoints of the load. */
const orderedSensors = async () => {
  const line = { ...lineInput, quantity: "1", setpoints: "300 500 700 900 1100" };
  const fahrenheit = {
    ...line,
    temperatureUnit: "F" as const,
    setpoints: "572 932 1292 1652 2012",
    tolerance: "own" as const,
    ownLimit: "5",
  };
  const number = await accepted(
    bench,
    orderInput(bench.northern.customerId, {
      decisionRule: "target-risk",
      falseAcceptancePercent: "2.5",
      lines: [{ ...line, tolerance: "astm-special" }, fahrenheit],
    }),
  );
  const [[special], [own]] = [
    await received(bench, number, "E230-1", 1),
    await received(bench, number, "OWN-1", 2),
  ];
  return { number, tags: [special, own] as const };
};

it("a run's evidence carries the tolerance and the rule as the order agreed them", async () => {
  const input = await fullRunInput(bench);
  const { number, tags } = await orderedSensors();
  const taken = new Set<string>();
  const places = input.places.map((place) => {
    const tag = tags[taken.size];
    if (place.item.kind !== "sensor" || !tag) return place;
    taken.add(tag);
    return { ...place, item: { kind: "sensor" as const, tag } };
  });
  const run = await execute(createRun, bench.technician, { ...input, places }, benchClock);
  const loaded = await inLaboratory((tx) => loadEvidence(tx, run.number));
  const sensors = tags.map((tag) => loaded?.evidence.sensors.find(({ id }) => id === tag));
  expect(sensors.map((sensor) => sensor?.tolerance)).toEqual([
    { standard: "ASTM E230/E230M", class: "special" },
    {
      kind: "user",
      fixedCelsius: 5 / 1.8,
      base: "fahrenheit",
      source: `Order ${number}, agreed by Nora North, on 2026-03-02`,
    },
  ]);
  for (const sensor of sensors)
    expect(sensor?.decisionRule).toEqual({ kind: "target-risk", falseAcceptance: 0.025, isBinary: true });
  const others = loaded?.evidence.sensors.filter(({ id }) => !tags.some((tag) => tag === id)) ?? [];
  expect(others.length).toBeGreaterThan(0);
  for (const sensor of others) expect(sensor.decisionRule).toEqual({ kind: "guarded", guardBandRatio: 1 });
});
