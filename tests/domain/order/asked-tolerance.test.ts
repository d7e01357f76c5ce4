import { describe, expect, it } from "vitest";
import {
  type AskedTolerance,
  askedTolerance,
  readTolerance,
  storedTolerance,
} from "@/lib/domain/order/asked-tolerance";
import { reviewOrder } from "@/lib/domain/order/contract-review";
import { decisionRuleText, toleranceChoices } from "@/lib/domain/order/labels";
import { setpointTolerances } from "@/lib/domain/order/setpoint-tolerances";
import { tolerancePhrase } from "@/lib/domain/order/tolerance-phrase";

const asked = (tolerance: AskedTolerance["tolerance"], unit: "C" | "F" = "C"): AskedTolerance => ({
  tolerance,
  temperatureUnit: unit,
  ...(tolerance === "own" ? { ownLimit: 2.5 } : {}),
});

describe("what a line asks to be judged by", () => {
  it.each(toleranceChoices.flatMap((choice) => [[choice, "C"] as const, [choice, "F"] as const]))(
    "%s in °%s is read back as it was stored",
    (choice, unit) => {
      expect(readTolerance(storedTolerance(asked(choice, unit)), unit)).toEqual(asked(choice, unit));
    },
  );

  it("becomes the evidence's words, with where it was agreed", () => {
    expect(askedTolerance(asked("2"))).toEqual({ standard: "IEC 60584-1:2013", class: "2" });
    expect(askedTolerance(asked("own", "F"), "Order O-2026-0001")).toEqual({
      kind: "user",
      fixedCelsius: 2.5 / 1.8,
      base: "fahrenheit",
      source: "Order O-2026-0001",
    });
    expect(askedTolerance(asked("none"))).toBeNull();
    expect(askedTolerance({ tolerance: "own", temperatureUnit: "C" }), "not typed yet").toBeNull();
  });

  it.each([
    ["IEC 60584-1:2013", "4"],
    ["customer's own limit", "3"],
    ["another", "1"],
  ])("refuses %s, %s, which no order wrote", (toleranceStandard, toleranceClass) => {
    expect(() => readTolerance({ toleranceStandard, toleranceClass }, "C")).toThrow("unknown tolerance");
  });

  it("is said as one phrase on paper", () => {
    const phrase = (choice: AskedTolerance["tolerance"]) => tolerancePhrase(storedTolerance(asked(choice)));
    expect(phrase("1")).toBe("IEC 60584-1:2013, tolerance class 1");
    expect(phrase("astm-standard")).toBe("ASTM E230/E230M, standard tolerances");
    expect(phrase("own")).toBe("The customer’s own limit, ± 2.5 °C");
    expect(phrase("none")).toBe("");
  });

  it("stands at each setpoint in the customer's unit", () => {
    const line = { typeLetter: "K", setpoints: [{ typed: "600", celsius: 2840 / 9 }] } as const;
    const [own] = setpointTolerances({ ...line, ...asked("own", "F") });
    expect(own).toMatchObject({ tolerance: "± 2.50 °F", state: "defined" });
    const [special] = setpointTolerances({ ...line, ...asked("astm-special", "F") });
    expect(special?.tolerance, "0.4 % of 315.56 °C in °F").toBe("± 2.27 °F");
  });

  it("is reviewed: what E230 makes depend on the order, and where it ends, is told", () => {
    const review = reviewOrder(
      {
        state: "recorded",
        decisionRule: "target-risk",
        decisionRuleAgreedBy: "Nora North",
        decisionRuleAgreedOn: "2026-03-02",
        lines: [
          {
            ...asked("astm-standard"),
            position: 1,
            typeLetter: "K",
            setpoints: [
              { typed: "-100", celsius: -100 },
              { typed: "1300", celsius: 1300 },
            ],
          },
        ],
      },
      [{ name: "Tube", minimumCelsius: -200, maximumCelsius: 1500 }],
    );
    expect(review.map(({ message }) => message)).toEqual([
      "Line 1: ASTM E230/E230M, standard of type K has no tolerance defined at 1300 °C; nothing can be stated there.",
      "Line 1: ASTM E230/E230M, standard at −100 °C (± 2.20 °C): holds only where ordered for temperatures below 0 °C.",
    ]);
  });
});

describe("an order's decision rule in one line", () => {
  it.each([
    ["none", null, null, "No statement of conformity"],
    ["simple", null, null, "Simple acceptance (guard band w = 0)"],
    ["guarded", 1, null, "Guarded acceptance (guard band w = 1 × U)"],
    ["guarded-binary", 0.83, null, "Guarded acceptance, pass or fail (guard band w = 0.83 × U)"],
    ["target-risk", null, 5, "Target risk, pass or fail (false acceptance at most 5 %)"],
  ] as const)("%s", (decisionRule, guardBandRatio, falseAcceptancePercent, words) => {
    expect(decisionRuleText({ decisionRule, guardBandRatio, falseAcceptancePercent })).toBe(words);
  });
});
