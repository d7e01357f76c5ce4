import { describe, expect, it } from "vitest";
import { assessImpact, isToBeTold, worstImpact } from "@/lib/domain/nonconformity/impact";
import { whomToTell } from "@/lib/domain/nonconformity/whom-to-tell";

const result = { celsius: 1000, errorCelsius: 0.5, expandedCelsius: 1.5, toleranceCelsius: 4 };

describe("the class of an effect", () => {
  // On both sides of each limit of |δ|/U, with U = 1.5 °C.
  it.each([
    [null, "not-stated"],
    [0, "none"],
    [0.149, "none"],
    [-0.151, "review"],
    [0.49, "review"],
    [0.501, "significant"],
    [1.5, "significant"],
    [-1.51, "recall"],
  ] as const)("δ = %s °C: %s", (delta, expected) => {
    expect(assessImpact(result, delta)).toBe(expected);
  });

  it("is a recall where the statement of conformity would turn, either way, however small the change", () => {
    expect(assessImpact({ ...result, errorCelsius: 3.95 }, 0.1)).toBe("recall");
    expect(assessImpact({ ...result, errorCelsius: 4.05 }, -0.1)).toBe("recall");
    expect(assessImpact({ ...result, errorCelsius: 3.95 }, -0.1)).toBe("none");
    expect(assessImpact({ ...result, errorCelsius: 3.95, toleranceCelsius: null }, 0.1)).toBe("none");
  });

  it("counts by the worst of a certificate", () => {
    expect(worstImpact([])).toBe("none");
    expect(worstImpact(["review", "recall", "none"])).toBe("recall");
    expect((["none", "review", "not-stated", "significant", "recall"] as const).filter(isToBeTold)).toEqual([
      "not-stated",
      "significant",
      "recall",
    ]);
  });
});

it("tells each customer once, with its orders", () => {
  const certificate = { number: "C-1", results: 1, largestRatio: 1 };
  const effect = {
    certificates: [
      { ...certificate, customerId: "a", orderNumber: "O-2", impact: "recall" as const },
      { ...certificate, customerId: "a", orderNumber: "O-1", impact: "significant" as const },
      { ...certificate, customerId: "a", orderNumber: "O-1", impact: "significant" as const },
      { ...certificate, customerId: "b", orderNumber: "O-3", impact: "review" as const },
    ],
  };
  expect(whomToTell(effect, [{ customerId: "c", orderNumber: "O-4" }])).toEqual([
    { customerId: "a", orders: ["O-1", "O-2"] },
    { customerId: "c", orders: ["O-4"] },
  ]);
  expect(whomToTell(null, [])).toEqual([]);
});
