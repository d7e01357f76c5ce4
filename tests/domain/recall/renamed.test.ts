import { expect, it } from "vitest";
import { type Naming, namesSince } from "@/lib/domain/recall/renamed";

const on = (month: number) => new Date(Date.UTC(2026, month, 1));
const named = (sensorId: string, serial: string, since: number | null = null): Naming => ({
  ...{ sensorId, serial },
  since: since === null ? null : on(since),
});
/** Taken in as A, corrected to B in March and to C in June. */
const namings = [named("1", "A"), named("1", "B", 3), named("1", "C", 6)];

it("carries what was said of a sensor to what it is called now", () => {
  for (const [serial, month] of [
    ["A", 1],
    ["B", 4],
    ["C", 7],
  ] as const)
    expect(namesSince(namings, serial, on(month))).toEqual(["C"]);
});

it("leaves what was said of a serial that nothing bore then, or that another bears, where it is", () => {
  expect(namesSince(namings, "A", on(4))).toEqual(["A"]);
  expect(namesSince([], "A", on(1))).toEqual(["A"]);
  // Two of one serial, one of which was misread: it was said of both.
  const two = [...namings, named("2", "A")];
  expect(namesSince(two, "A", on(1))).toEqual(["C", "A"]);
  expect(namesSince(two, "A", on(4))).toEqual(["A"]);
});
