import { describe, expect, it } from "vitest";
import { halfLastDigit, type PublishedValue, toleranceOf } from "../vectors/published-value";
import { allChecks } from "./all-checks";

/** What the project holds itself to; rows of the thermocouple tables are checked elsewhere and are not among these. */
const FEWEST_READ = 150;
const MOST_OF_A_FAMILY = 40;

const modules = import.meta.glob<Record<string, unknown>>("../vectors/*.ts", { eager: true });

function isPublishedValue(value: unknown): value is PublishedValue {
  return typeof value === "object" && value !== null && "family" in value && "printed" in value;
}

/** Every published value that any vector file exports, whether a check uses it or not. */
const exported = Object.values(modules)
  .flatMap((module) => Object.values(module))
  .flatMap((exportOfIt) => (typeof exportOfIt === "object" && exportOfIt ? Object.values(exportOfIt) : []))
  .filter(isPublishedValue);

const isRead = ({ source }: PublishedValue) => source.provenance === "read";
const label = ({ family, name }: PublishedValue) => `${family}: ${name}`;
const counted = allChecks.map(({ vector }) => vector).filter(isRead);

describe("published values", () => {
  // This run is the use that the inventory counts: both go through the same list, in the same file.
  it.each(allChecks.map((check) => [label(check.vector), check] as const))("%s", (_, { vector, actual }) => {
    const computed = actual();
    const distance = Math.abs(computed - Number(vector.printed));
    // The share for the rounding of the difference itself: 2.5 against 2.45 to half of 0.1.
    expect(
      distance <= toleranceOf(vector) * (1 + 1e-9),
      `${computed} where ${vector.source.document}, ${vector.place}, prints ${vector.printed}`,
    ).toBe(true);
  });
});

describe("the inventory", () => {
  it(`holds at least ${FEWEST_READ} values that were read, no family above ${MOST_OF_A_FAMILY}`, () => {
    expect(counted.length).toBeGreaterThanOrEqual(FEWEST_READ);
    for (const family of new Set(counted.map((value) => value.family))) {
      const size = counted.filter((value) => value.family === family).length;
      expect(size, family).toBeLessThanOrEqual(MOST_OF_A_FAMILY);
    }
  });

  it("counts each value once, and no value that nothing checks", () => {
    const used = allChecks.map(({ vector }) => vector);
    expect(new Set(used.map(label)).size).toBe(used.length);
    expect(exported.filter((value) => !used.includes(value)).map(label)).toEqual([]);
    expect(used.filter((value) => !exported.includes(value)).map(label)).toEqual([]);
  });

  it("gives document, place and where each was read, never a path of one machine", () => {
    for (const value of counted) {
      expect(value.source.document.length, label(value)).toBeGreaterThan(10);
      expect(value.place.length, label(value)).toBeGreaterThan(0);
      expect(value.source.readAt, label(value)).toMatch(/^(https?:\/\/\S+\.\S+|[\w.-]+\/[\w.-]+: \S+)/);
    }
  });

  it("lets a tolerance depart from half the last digit only with a reason", () => {
    for (const { vector } of allChecks) {
      expect(Number.isFinite(Number(vector.printed)), label(vector)).toBe(true);
      if (vector.tolerance) expect(vector.tolerance.reason.length, label(vector)).toBeGreaterThan(20);
      else expect(toleranceOf(vector)).toBe(halfLastDigit(vector.printed));
    }
  });

  it("would notice a value that is off by two of its last digits, or by its whole tolerance and half as much again", () => {
    for (const { vector, actual } of allChecks) {
      const off = actual() + 2.5 * Math.max(toleranceOf(vector), halfLastDigit(vector.printed));
      expect(Math.abs(off - Number(vector.printed)) > toleranceOf(vector), label(vector)).toBe(true);
    }
  });

  it("lists what rests on memory, and does not count it", () => {
    const remembered = allChecks.map(({ vector }) => vector).filter((value) => !isRead(value));
    expect(remembered.map(label)).toEqual([
      "GUM H.1, end gauge: expanded",
      "GUM H.3, thermometer calibration: s",
      "GUM H.3, thermometer calibration: freedom",
      "EA-4/02 S5, furnace and thermocouple: reported",
      "EA-4/02 S5, furnace and thermocouple: computed",
      "EA-4/02 S9 and S10, dominant rectangles: multimeterFactor",
      "EA-4/02 S9 and S10, dominant rectangles: multimeterExpanded",
      "EA-4/02 S9 and S10, dominant rectangles: calliperFactor",
      "EA-4/02 S9 and S10, dominant rectangles: calliperExpanded",
      "JCGM 106, conformance probability: example 1, breakdown voltage of a Zener diode",
      "JCGM 106, conformance probability: example 2, burst strength of a container",
    ]);
  });
});
