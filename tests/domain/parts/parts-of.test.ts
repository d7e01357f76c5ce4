import { describe, expect, it } from "vitest";
import { nextSet } from "@/lib/domain/parts/decide-set";
import { type PartLoad, partsOf, type SensorFacts } from "@/lib/domain/parts/parts-of";

const load = (change: Partial<PartLoad> = {}): PartLoad => ({
  run: "R-1",
  runState: "measuring",
  set: "as-received",
  setpointsCelsius: [600, 1000],
  results: [],
  left: null,
  certificate: null,
  ...change,
});
const measured = [
  { celsius: 600, state: "measured" },
  { celsius: 1000, state: "invalid" },
] as const;

const sensor = (loads: readonly PartLoad[], change: Partial<SensorFacts> = {}): SensorFacts => ({
  tag: "T-1",
  serial: "S",
  state: "received",
  sets: "as-received",
  isAnnealed: false,
  isHeld: false,
  handBack: null,
  setpoints: [
    { typed: "600", celsius: 600 },
    { typed: "1000", celsius: 1000 },
  ],
  loads,
  ...change,
});
const statesOf = (loads: readonly PartLoad[], change: Partial<SensorFacts> = {}) =>
  partsOf([sensor(loads, change)])[0]!.rows.map(({ cells }) => cells.map(({ state }) => state));

describe("the state of a sensor at a setpoint", () => {
  it.each([
    ["waiting", [], ["waiting", "waiting"]],
    ["planned", [load()], ["planned", "planned"]],
    ["measured", [load({ results: measured })], ["measured", "invalid"]],
    ["in review", [load({ results: measured, runState: "submitted" })], ["in-review", "invalid"]],
    ["kept", [load({ results: measured, left: "kept" })], ["kept", "invalid"]],
    ["set aside", [load({ results: measured, left: "put-back" })], ["set-aside", "set-aside"]],
    ["reported", [load({ results: measured, certificate: "C-1" })], ["reported", "invalid"]],
    [
      "withdrawn",
      [load({ results: measured, certificate: "C-1", isWithdrawn: true })],
      ["withdrawn", "invalid"],
    ],
    ["abandoned", [load({ results: measured, runState: "abandoned" })], ["waiting", "waiting"]],
    ["of another setpoint", [load({ setpointsCelsius: [600.004] })], ["planned", "waiting"]],
  ] as const)("%s", (_, loads, expected) => {
    expect(statesOf(loads)).toEqual([expected]);
  });

  it("waits for nothing where the sensor goes back, or is gone", () => {
    for (const over of [
      { handBack: "unmeasured" },
      { handBack: "cancelled" },
      { state: "collected" },
    ] as const)
      expect(statesOf([], over)).toEqual([["not-to-be", "not-to-be"]]);
  });

  it("is told by the last run that says anything; what was set aside gives way", () => {
    const aside = load({ results: measured, left: "put-back" });
    expect(statesOf([aside, load({ run: "R-2" })])).toEqual([["planned", "planned"]]);
    expect(statesOf([load({ results: measured, certificate: "C-1" }), { ...aside, run: "R-2" }])).toEqual([
      ["reported", "invalid"],
    ]);
  });

  it("is told of each set apart", () => {
    const both = [load({ results: measured, left: "kept" }), load({ run: "R-2", set: "after-anneal" })];
    expect(statesOf(both, { sets: "both", isAnnealed: true })).toEqual([
      ["kept", "invalid"],
      ["planned", "planned"],
    ]);
  });
});

describe("what comes next for a sensor", () => {
  const nextOf = (loads: readonly PartLoad[], change: Partial<SensorFacts> = {}) =>
    partsOf([sensor(loads, change)])[0]!.next;

  it.each([
    [[], {}, "Plan a run."],
    [[], { isHeld: true }, "On hold: settle what keeps it."],
    [[], { sets: "after-anneal" }, "Anneal it, then plan its next run."],
    [[], { sets: "both" }, "Plan a run."],
    [[load({ results: measured, left: "kept" })], { sets: "both" }, "Anneal it, then plan its next run."],
    [[load({ left: "put-back" })], {}, "Plan another run: its earlier results were set aside."],
    [[load()], { state: "loaded" }, "In a run: measure, evaluate and submit it."],
    [[load()], { state: "in-review" }, "Waits for the signatory."],
    [[], { handBack: "unmeasured", isHeld: true }, "Not measured, by the end of its hold: send it back."],
    [[], { handBack: "cancelled" }, "Not measured, its order is cancelled: send it back."],
    [[load()], { state: "issued", handBack: "certified" }, "Certified: send it back."],
    [
      [load({ results: measured, certificate: "C-1", isWithdrawn: true })],
      { state: "issued", handBack: "certified" },
      "Its certificate is withdrawn: agree with the customer before it goes back.",
    ],
    [[load()], { state: "collected" }, "Handed back."],
  ] as const)("%#", (loads, change, expected) => {
    expect(nextOf(loads, change)).toBe(expected);
  });
});

it("the next set of a sensor follows from its order, what was kept and what was annealed", () => {
  const none = { hasReceivedSet: false, isAnnealed: false };
  expect(nextSet({ sets: "as-received" }, none)).toBe("as-received");
  expect(nextSet({ sets: "after-anneal" }, none)).toBeNull();
  expect(nextSet({ sets: "both" }, none)).toBe("as-received");
  expect(nextSet({ sets: "both" }, { ...none, hasReceivedSet: true })).toBeNull();
  for (const sets of ["after-anneal", "both"] as const)
    expect(nextSet({ sets }, { hasReceivedSet: true, isAnnealed: true })).toBe("after-anneal");
});
