import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { afterWork, nextWork, workingDayAfter } from "@/lib/domain/promise/calendar";
import {
  loadHours,
  loadsOf,
  type PlannedFurnace,
  type PlannedGroup,
} from "@/lib/domain/promise/furnace-hours";
import { defaultPromisePolicy as policy } from "@/lib/domain/promise/policy";
import { type Plan, type PlannedOrder, proposePromise } from "@/lib/domain/promise/propose-promise";

const at = (text: string): number => Date.parse(`${text}Z`);
const furnace = (more: Partial<PlannedFurnace> = {}): PlannedFurnace => ({
  ...{ id: "a", tag: "FUR-01", name: "Tube furnace" },
  ...{
    minimumCelsius: 200,
    maximumCelsius: 1200,
    rampUpCelsiusPerHour: 600,
    rampDownCelsiusPerHour: 300,
    places: 8,
  },
  ...more,
});
const group = (more: Partial<PlannedGroup> = {}): PlannedGroup => ({
  setpointsCelsius: [325, 625],
  sensors: 4,
  sets: 1,
  ...more,
});
const order = (number: string, more: Partial<PlannedOrder> = {}): PlannedOrder => ({
  number,
  urgency: "standard",
  since: 0,
  groups: [group()],
  ...more,
});
// Monday.
const from = at("2026-03-09T00:00:00");
const plan = (more: Partial<Plan> = {}): Plan => ({
  ...{ order: order("O-9", { since: 9 }), waiting: [], furnaces: [furnace()], taken: [], from, policy },
  ...more,
});
const proposed = (more: Partial<Plan> = {}) => {
  const proposal = proposePromise(plan(more));
  if (proposal.kind !== "proposed") throw new Error(proposal.reason);
  return proposal;
};

describe("hours of a furnace", () => {
  it("are loading, heating at the furnace's own rate, a dwell at each setpoint, and cooling until it may be opened", () => {
    // 1 h + 600 K / 600 K/h + 2 × 0.75 h; 565 K / 300 K/h, in quarters.
    expect(loadHours(group(), furnace(), policy)).toEqual({ attended: 3.5, cooling: 2 });
    // Without rates of its own, those of the policy: 600 / 300 and 565 / 150.
    const bare = furnace({ rampUpCelsiusPerHour: null, rampDownCelsiusPerHour: null });
    expect(loadHours(group(), bare, policy)).toEqual({ attended: 4.5, cooling: 4 });
  });

  it("come as loads: references keep their places, and two sets are two measurements", () => {
    expect(loadsOf(group({ sensors: 6 }), furnace(), policy)).toBe(1);
    expect(loadsOf(group({ sensors: 7 }), furnace(), policy)).toBe(2);
    expect(loadsOf(group({ sensors: 7, sets: 2 }), furnace(), policy)).toBe(4);
    expect(loadsOf(group({ sensors: 3 }), furnace({ places: 1 }), policy)).toBe(3);
  });
});

describe("the calendar of the laboratory", () => {
  it.each([
    ["2026-03-09T03:00:00", "2026-03-09T08:00:00"],
    ["2026-03-09T12:30:00", "2026-03-09T12:30:00"],
    ["2026-03-09T17:00:00", "2026-03-10T08:00:00"],
    ["2026-03-13T18:00:00", "2026-03-16T08:00:00"],
    ["2026-03-14T10:00:00", "2026-03-16T08:00:00"],
  ])("works next after %s at %s", (moment, next) => {
    expect(new Date(nextWork(at(moment), policy))).toEqual(new Date(at(next)));
  });

  it("lets nights and free days pass", () => {
    expect(afterWork(at("2026-03-09T15:00:00"), 2, policy)).toBe(at("2026-03-09T17:00:00"));
    expect(afterWork(at("2026-03-13T15:00:00"), 3, policy)).toBe(at("2026-03-16T09:00:00"));
    expect(workingDayAfter(at("2026-03-12T23:00:00"), 2, policy)).toBe("2026-03-16");
    expect(workingDayAfter(at("2026-03-14T01:00:00"), 0, policy)).toBe("2026-03-16");
  });
});

describe("the day an order can be promised for", () => {
  it("is when its loads are through, and the days of review after", () => {
    const { slots, promisedOn, furnaceHours } = proposed();
    expect(slots.map(({ startsAt, endsAt }) => [startsAt, endsAt])).toEqual([
      [at("2026-03-09T08:00:00"), at("2026-03-09T13:30:00")],
    ]);
    expect([promisedOn, furnaceHours]).toEqual(["2026-03-11", 5.5]);
  });

  it("stands behind what is promised and who waits longer, in the furnace that is done first", () => {
    const taken = [
      { of: "", furnaceId: "a", startsAt: at("2026-03-09T08:00:00"), endsAt: at("2026-03-11T12:00:00") },
    ];
    expect(proposed({ taken }).slots[0]?.startsAt).toBe(at("2026-03-11T12:00:00"));
    const two = [furnace(), furnace({ id: "b", tag: "FUR-02" })];
    expect(proposed({ taken, furnaces: two }).slots[0]?.furnaceTag).toBe("FUR-02");
    const waiting = [order("O-1", { since: 1 }), order("O-10", { since: 10 })];
    const after = proposed({ waiting });
    expect(after.ahead).toEqual(["O-1"]);
    expect(after.slots[0]?.startsAt).toBe(at("2026-03-09T13:30:00"));
  });

  it("puts express before all that is not promised, and moves nothing that is", () => {
    const taken = [
      { of: "", furnaceId: "a", startsAt: at("2026-03-09T08:00:00"), endsAt: at("2026-03-09T12:00:00") },
    ];
    const waiting = [order("O-1", { since: 1 }), order("O-2", { since: 2, urgency: "express" })];
    const express = proposed({ taken, waiting, order: order("O-9", { since: 9, urgency: "express" }) });
    expect(express.ahead).toEqual(["O-2"]);
    expect(proposed({ taken, waiting }).ahead).toEqual(["O-2", "O-1"]);
    for (const slot of express.slots) expect(slot.startsAt).toBeGreaterThanOrEqual(at("2026-03-09T12:00:00"));
  });

  it("names whose hours lie in front, and nobody whose hours lie behind, elsewhere, or are over", () => {
    const hours = (of: string, furnaceId: string, starts: string, ends: string) => ({
      ...{ of, furnaceId },
      ...{ startsAt: at(`2026-03-${starts}:00:00`), endsAt: at(`2026-03-${ends}:00:00`) },
    });
    const taken = [
      hours("O-6", "a", "09T08", "09T16"),
      hours("O-5", "a", "06T08", "06T16"),
      hours("", "a", "09T16", "09T17"),
      hours("O-7", "b", "09T08", "13T16"),
      hours("O-4", "a", "31T08", "31T16"),
    ];
    const furnaces = [furnace(), furnace({ id: "b", tag: "FUR-02" })];
    const long = group({ sets: 2, sensors: 30, setpointsCelsius: [1150] });
    const waiting = [order("O-8", { since: 1, groups: [long] }), order("O-1", { since: 2, groups: [] })];
    const { ahead, slots } = proposed({ taken, furnaces: [furnaces[0]!], waiting });
    expect(slots[0]?.startsAt).toBeGreaterThanOrEqual(at("2026-03-09T17:00:00"));
    expect(ahead).toEqual(["O-6", "O-8"]);
    expect(proposed({ taken, furnaces }).ahead).toEqual(["O-6"]);
    // In the gap in front of a later promise.
    expect(proposed({ taken: [hours("O-6", "a", "10T08", "10T16")] }).ahead).toEqual([]);
  });

  it("is none where no furnace reaches, and says which reach what", () => {
    const proposal = proposePromise(
      plan({ order: order("O-9", { groups: [group({ setpointsCelsius: [1350] })] }) }),
    );
    expect(proposal).toMatchObject({ kind: "impossible" });
    expect(proposal.kind === "impossible" && proposal.reason).toContain("FUR-01 reaches 200 to 1200 °C");
    const both = proposePromise(
      plan({ order: order("O-9", { groups: [group({ setpointsCelsius: [1200, 1300] })] }) }),
    );
    expect(both.kind === "impossible" && both.reason).toMatch(/^No furnace reaches 1300 °C: FUR-01 reaches/);
    expect(proposePromise(plan({ furnaces: [] }))).toMatchObject({ kind: "impossible" });
  });

  it("needs no furnace for work that is done elsewhere", () => {
    expect(proposed({ order: order("O-9", { groups: [] }) })).toMatchObject({
      slots: [],
      promisedOn: "2026-03-11",
    });
  });

  it("is not before what of the order is in a furnace already is through", () => {
    const hours = { furnaceId: "a", startsAt: at("2026-03-06T08:00:00"), endsAt: at("2026-03-12T09:00:00") };
    const taken = [{ ...hours, of: "R-1", orders: ["O-9"] }];
    const own = proposed({ order: order("O-9", { groups: [] }), taken });
    expect([own.slots, own.promisedOn]).toEqual([[], "2026-03-16"]);
  });

  it("never takes an hour twice, begins in working hours, and holds every sensor, whatever waits", () => {
    const anyGroup = fc.record({
      setpointsCelsius: fc.array(fc.integer({ min: 200, max: 1200 }), { minLength: 1, maxLength: 8 }),
      sensors: fc.integer({ min: 1, max: 40 }),
      sets: fc.constantFrom(1 as const, 2 as const),
    });
    const anyTaken = fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 30 })), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(fc.array(anyGroup, { minLength: 1, maxLength: 3 }), anyTaken, (groups, busy) => {
        const taken = busy.map(([start, hours]) => ({
          ...{ of: "", furnaceId: "a" },
          startsAt: from + start * 3_600_000,
          endsAt: from + (start + hours) * 3_600_000,
        }));
        const { slots } = proposed({ taken, order: order("O-9", { groups }) });
        for (const [index, slot] of slots.entries()) {
          expect(nextWork(slot.startsAt, policy)).toBe(slot.startsAt);
          for (const other of [...taken, ...slots.slice(index + 1)])
            expect(other.startsAt < slot.endsAt && slot.startsAt < other.endsAt).toBe(false);
        }
        expect(slots.reduce((sum, { sensors }) => sum + sensors, 0)).toBe(
          groups.reduce((sum, { sensors, sets }) => sum + sensors * sets, 0),
        );
      }),
      { numRuns: 200 },
    );
  });
});
