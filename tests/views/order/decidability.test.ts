import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { recordScopeLine } from "@/lib/operations/scope/record-line";
import { orderDecidabilityView } from "@/lib/views/order/decidability";
import { refusalOf } from "../../support/front-desk";
import { lineInput, orderInput, recorded } from "../../support/orders";
import { benchClock, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let number: string;

beforeAll(async () => {
  bench = await openRunBench();
  const lines = [
    { ...lineInput, setpoints: "600 1000 1100" },
    {
      ...lineInput,
      typeLetter: "S" as const,
      protection: "alumina-sheath" as const,
      setpoints: "1000",
      tolerance: "1" as const,
    },
  ];
  number = await recorded(bench, orderInput(bench.northern.customerId, { lines, guardBandRatio: "2" }));
});
afterAll(() => bench.close());

describe("what could be stated at an order's setpoints", () => {
  it("follows from the standards in service on the day", async () => {
    const points = await orderDecidabilityView(bench.frontDesk, number, benchClock());
    expect(points.map(({ position, setpoint, state }) => [position, setpoint, state])).toEqual([
      [1, "600 °C", "decidable"],
      [1, "1000 °C", "decidable"],
      [1, "1100 °C", "no-tolerance-defined"],
      [2, "1000 °C", "not-decidable"],
    ]);
    const [first, , , last] = points;
    expect(first?.expected).toMatch(/^about \d\.\d+ °C$/);
    expect(first?.sentence).toContain("class 1 (± 2.4 °C), guarded acceptance: decidable; U about");
    expect(last?.help.join()).toContain("U below 0.50 °C");
  });

  it("is held against today's scope, setpoint by setpoint, and U is never below its capability", async () => {
    const plain = await orderDecidabilityView(bench.frontDesk, number, benchClock());
    expect(plain.map(({ scope }) => scope.state)).toEqual(Array(4).fill("not-stated"));
    const line = { fromCelsius: 0, toCelsius: 1000, validFrom: "2026-01-01", source: "invented schedule" };
    const capability = { kind: "proportional" as const, constantCelsius: 1, perCelsius: 0.003 };
    await execute(recordScopeLine, bench.manager, { ...line, typeLetter: "K", capability }, benchClock);
    const points = await orderDecidabilityView(bench.frontDesk, number, benchClock());
    expect(points.map(({ scope }) => [scope.state, scope.capability])).toEqual([
      ["inside", "2.8 °C"],
      ["inside", "4.0 °C"],
      ["outside", ""],
      ["outside", ""],
    ]);
    expect(points.map(({ expected }) => expected).slice(0, 2)).toEqual(["about 2.8 °C", "about 4.0 °C"]);
    // A tolerance of 2.4 °C cannot be decided with that U, though it could without a scope.
    expect(points.map(({ state }) => state).slice(0, 2)).toEqual(["not-decidable", "not-decidable"]);
    expect(points[2]?.expected).toBe(plain[2]?.expected);
  });

  it("is not known where nothing was calibrated yet", async () => {
    const points = await orderDecidabilityView(bench.frontDesk, number, new Date("2020-01-01T00:00:00Z"));
    expect(points[0]).toMatchObject({ state: "unknown", expected: "" });
    expect(points[0]?.sentence).toContain("No furnace configuration");
  });

  it("is the laboratory's own affair", async () => {
    const asked = orderDecidabilityView(bench.northern.actor, number, benchClock());
    expect(await refusalOf(asked)).toMatchObject({ code: "not-permitted" });
  });
});
