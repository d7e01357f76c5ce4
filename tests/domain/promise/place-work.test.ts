import { describe, expect, it } from "vitest";
import { type FurnaceWork, placeWork } from "@/lib/domain/promise/place-work";
import { defaultPromisePolicy as policy } from "@/lib/domain/promise/policy";
import { readPromiseBasis } from "@/lib/domain/promise/promise-basis";
import { stillReserved } from "@/lib/domain/promise/still-reserved";

const at = (text: string): number => Date.parse(`2026-03-${text}:00Z`);
const work = (number: string, more: Partial<FurnaceWork> = {}): FurnaceWork => ({
  ...{ number, furnaceId: "a", isMeasuring: false, startedAt: null },
  ...{ rampUpCelsiusPerHour: 600, rampDownCelsiusPerHour: 300, celsius: [325, 625] },
  ...more,
});
const placed = (works: readonly FurnaceWork[], reserved: Parameters<typeof placeWork>[1], now: string) =>
  placeWork(works, reserved, at(now), policy).map(({ work: { number }, hours }) => [
    number,
    new Date(hours.startsAt).toISOString().slice(8, 16),
    new Date(hours.endsAt).toISOString().slice(8, 16),
  ]);

describe("the hours of runs", () => {
  it("are those of what is hot, then of what is planned, each in the first gap between these and what is reserved", () => {
    const reserved = [{ furnaceId: "a", startsAt: at("10T08:00"), endsAt: at("10T14:00") }];
    const works = [
      work("R-2"),
      work("R-3", { celsius: [325] }),
      work("R-1", { isMeasuring: true, startedAt: at("09T08:00") }),
      work("R-4", { furnaceId: "b" }),
    ];
    // 3.5 h attended and 2 h cooling; R-3 2.25 h and 1 h.
    expect(placed(works, reserved, "09T10:00")).toEqual([
      ["R-1", "09T08:00", "09T13:30"],
      ["R-2", "09T13:30", "09T19:00"],
      ["R-3", "10T14:00", "10T17:15"],
      ["R-4", "09T10:00", "09T15:30"],
    ]);
  });

  it("last until what is hot can have cooled, though it should be done by now", () => {
    const works = [work("R-1", { isMeasuring: true, startedAt: at("02T08:00") })];
    expect(placed(works, [], "09T10:00")).toEqual([["R-1", "02T08:00", "09T12:00"]]);
    expect(placed([work("CH-1", { isMeasuring: true })], [], "09T10:00")).toEqual([
      ["CH-1", "09T10:00", "09T15:30"],
    ]);
  });
});

describe("what is still reserved for an order", () => {
  const slot = (startsAt: number, sensors: number | null, owed: number, orderId: string | null = "o") => ({
    ...{ startsAt, sensors, owed, orderId },
  });
  const starts = (slots: Parameters<typeof stillReserved>[0]) =>
    stillReserved(slots).map(({ startsAt }) => startsAt);

  it("is what its sensors that are in no run yet need, the latest hours; the same sensors never count twice", () => {
    const hours = (owed: number) => [slot(1, 8, owed), slot(2, 8, owed), slot(3, 4, owed)];
    expect(starts(hours(20))).toEqual([1, 2, 3]);
    expect(starts(hours(12))).toEqual([2, 3]);
    expect(starts(hours(4))).toEqual([3]);
    expect(starts(hours(0))).toEqual([]);
  });

  it("is all of it where nobody told for how many, while anything waits; and hours of no order stay", () => {
    expect(starts([slot(1, null, 1), slot(2, null, 1), slot(3, null, 0, null)])).toEqual([1, 2, 3]);
    expect(starts([slot(1, null, 0)])).toEqual([]);
  });

  it("reads for how many from what the promise stands on", () => {
    const slots = [{ furnace: "FUR-01", sensors: 3, startsAt: "2026-03-09T08:00:00.000Z" }];
    expect(readPromiseBasis(JSON.stringify({ proposedOn: null, slots }))).toEqual(slots);
    expect([readPromiseBasis("{}"), readPromiseBasis(null)]).toEqual([[], []]);
  });
});
