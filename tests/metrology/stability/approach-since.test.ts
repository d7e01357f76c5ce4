import { expect, it } from "vitest";
import { approachSince } from "@/lib/metrology/stability/approach-since";

const reference = (id: string, ...celsius: readonly number[]) => ({
  id,
  seconds: celsius.map((_, n) => 10 * n),
  celsius,
});

it.each([
  ["the later of two arrivals", [reference("A", 590, 596, 600), reference("B", 590, 590, 604)], 20],
  ["the first reading, where it never was elsewhere", [reference("A", 600, 601)], 0],
  ["the return, after a break", [reference("A", 600, 590, 600, 600)], 20],
  ["nothing while one is away", [reference("A", 600, 600), reference("B", 600, 594)], null],
  ["nothing for a reading that is no number", [reference("A", 600, Number.NaN)], null],
  ["nothing without readings", [reference("A")], null],
  ["nothing without references", [], null],
])("stands at the setpoint since %s", (_, references, since) => {
  expect(approachSince(references, 600)).toBe(since);
});
