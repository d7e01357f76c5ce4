import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { ToleranceRef } from "@/lib/domain/evidence/schema";
import { toleranceAt, toleranceWords } from "@/lib/domain/evidence/tolerance-at";
import { buildEvidence } from "./build-evidence";

const own = { kind: "user", fixedCelsius: 3, base: "celsius", source: "Order O-2026-0001" } as const;

/** One type K sensor, judged by a tolerance with w = U; its U is about 0.9 °C. */
const judged = (tolerance: ToleranceRef, errorCelsius = 0, nominal = 600) => {
  const evidence = buildEvidence({ sensors: ["K"], nominals: [nominal], errorCelsius });
  const sensors = evidence.sensors.map((sensor) => ({ ...sensor, tolerance }));
  const rule = { kind: "guarded-binary", guardBandRatio: 1 } as const;
  const outcome = evaluateEvidence({ ...evidence, sensors, decisionRule: rule });
  if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
  const [point] = outcome.evaluation.points;
  if (point?.state !== "measured") throw new Error("not measured");
  return point.conformity;
};

describe("the tolerance of a sensor in an evidence file", () => {
  it("is a class of ASTM E230: type K at 600 °C standard 0.75 %, special 0.4 %", () => {
    const standard = judged({ standard: "ASTM E230/E230M", class: "standard" });
    expect(standard).toMatchObject({
      state: "pass",
      tolerance: { standard: "ASTM E230/E230M", class: "standard", celsius: 4.5 },
      printed: { tolerance: "4.5" },
    });
    const special = { standard: "ASTM E230/E230M", class: "special" } as const;
    expect(judged(special).tolerance?.celsius).toBeCloseTo(2.4, 12);
    expect(judged(special, 2).state).toBe("fail");
    // Special tolerances of K end at 0 °C downwards, standard ones go on to −200 °C where ordered.
    expect(toleranceAt(special, "K", -100).kind).toBe("not-defined");
    expect(toleranceAt({ standard: "ASTM E230/E230M", class: "standard" }, "K", -100)).toMatchObject({
      celsius: 2.2,
      note: expect.stringContaining("where ordered"),
    });
  });

  it("is the customer's own limit, in °C or °F, with or without a percentage", () => {
    expect(judged(own)).toMatchObject({
      state: "pass",
      tolerance: { standard: "customer's own limit", class: "± 3 °C", celsius: 3 },
    });
    expect(judged(own, 2.5).state).toBe("fail");
    expect(judged({ ...own, fixedCelsius: 0.5 }).state).toBe("not-decidable");
    const fahrenheit = { ...own, fixedCelsius: 5 / 1.8, base: "fahrenheit" } as const;
    expect(judged(fahrenheit)).toMatchObject({
      tolerance: { class: "± 5 °F", celsius: 5 / 1.8 },
      printed: { tolerance: "2.7778" },
    });
    // 1 % of 600 °C is 6 °C; 1 % of 1112 °F is 11.12 °F, which is 6.1778 °C.
    expect(toleranceAt({ ...own, percent: 1 }, "K", 600)).toMatchObject({ celsius: 6 });
    const share = toleranceAt({ ...fahrenheit, percent: 1 }, "K", 600);
    expect(share.kind === "defined" && share.celsius).toBeCloseTo(11.12 / 1.8, 9);
    expect(toleranceWords({ ...own, percent: 0.75 }).class).toBe(
      "± 3 °C or ± 0.75 % of the temperature in °C, whichever is larger",
    );
    expect(toleranceWords({ ...fahrenheit, percent: 1 }).class).toContain("± 1 % of the temperature in °F");
  });

  it.each([
    [{ standard: "ASTM E230/E230M", class: "1" }],
    [{ standard: "IEC 60584-1:2013", class: "special" }],
    [{ ...own, fixedCelsius: 0 }],
    [{ ...own, source: "" }],
    [{ ...own, base: "kelvin" }],
  ])("is never %o", (tolerance) => {
    expect(ToleranceRef.safeParse(tolerance).success).toBe(false);
  });
});
