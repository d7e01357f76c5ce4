import { describe, expect, it } from "vitest";
import { lineAt, linearFit } from "@/lib/metrology/number/linear-fit";
import { problemOf, resultOf } from "../result-of";

describe("linearFit", () => {
  it("finds a line in its centred form", () => {
    const fit = resultOf(linearFit([0, 1, 2, 3], [5, 7, 9, 11]));
    expect(fit).toEqual({ meanX: 1.5, meanY: 8, slope: 2 });
    expect(lineAt(fit, 10)).toBe(25);
  });

  it("refuses one reading, and readings at one time", () => {
    expect(problemOf(linearFit([1], [1]))).toBe("too-few");
    expect(problemOf(linearFit([1, 1], [1, 2]))).toBe("too-few");
  });
});
