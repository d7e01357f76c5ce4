import { describe, expect, it } from "vitest";
import { halfLastDigit, toleranceOf } from "../vectors/published-value";
import { allChecks } from "./all-checks";

const counted = allChecks.filter(({ vector }) => vector.source.provenance === "read");
const remembered = allChecks.filter(({ vector }) => vector.source.provenance === "from-memory");

describe("published values", () => {
  it.each(allChecks.map((check) => [`${check.vector.family}: ${check.vector.name}`, check] as const))(
    "%s",
    (_, { vector, actual }) => {
      const computed = actual();
      const distance = Math.abs(computed - Number(vector.printed));
      expect(
        distance <= toleranceOf(vector) * (1 + 1e-9),
        `${computed} where ${vector.source.document}, ${vector.place}, prints ${vector.printed}`,
      ).toBe(true);
    },
  );
});

describe("the inventory", () => {
  it("counts what was read, not what is remembered, and names each once", () => {
    const names = allChecks.map(({ vector }) => `${vector.family}: ${vector.name}`);
    expect(new Set(names).size).toBe(names.length);
    expect(counted.length).toBeGreaterThanOrEqual(80);
    expect(counted.length + remembered.length).toBe(allChecks.length);
  });

  it("gives document, place and where each was read; never a path of one machine", () => {
    for (const { vector } of allChecks) {
      const { document, readAt, provenance } = vector.source;
      expect(document.length > 0 && vector.place.length > 0, vector.name).toBe(true);
      if (provenance === "read") expect(readAt, vector.name).toMatch(/^(https?:\/\/|[\w.-]+\/[\w.-]+: )/);
    }
  });

  it("lets a tolerance exceed half the last digit only with a reason, and no value off by a unit passes unreasoned", () => {
    for (const { vector } of allChecks) {
      if (vector.tolerance) expect(vector.tolerance.reason.length, vector.name).toBeGreaterThan(20);
      else expect(toleranceOf(vector)).toBe(halfLastDigit(vector.printed));
      expect(Number.isFinite(Number(vector.printed)), vector.name).toBe(true);
    }
  });
});
