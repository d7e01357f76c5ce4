import { describe, expect, it } from "vitest";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import { lineInput, orderInput } from "../../support/orders";

const customerId = "00000000-0000-4000-8000-000000000001";

const problems = (more: object): Record<string, string> => {
  const parsed = RecordOrderInput.safeParse({ ...orderInput(customerId), ...more });
  return Object.fromEntries(
    (parsed.error?.issues ?? []).map((issue) => [issue.path.join("."), issue.message]),
  );
};

describe("an order as filled in", () => {
  it("is read whole, numbers from text", () => {
    const order = RecordOrderInput.parse(orderInput(customerId));
    expect(order.guardBandRatio).toBe(1);
    expect(order.uncertaintyDigits).toBe(2);
    expect(order.lines[0]).toMatchObject({
      quantity: 3,
      setpoints: [{ typed: "300", celsius: 300 }, {}, {}, {}, {}],
    });
  });

  it("says each refusal at its field", () => {
    const lines = [lineInput, { ...lineInput, quantity: "2.5", construction: " ", setpoints: "900 300" }];
    expect(Object.keys(problems({ lines })).sort()).toEqual([
      "lines.1.construction",
      "lines.1.quantity",
      "lines.1.setpoints",
    ]);
    expect(problems({ lines: [] })).toHaveProperty("lines");
    expect(problems({ customerId: "" })).toHaveProperty("customerId");
  });

  it("refuses temperatures at which the type is not defined", () => {
    const lines = [{ ...lineInput, setpoints: "300 1373", tolerance: "none" }];
    expect(
      problems({ lines, decisionRule: "none", decisionRuleAgreedBy: "", decisionRuleAgreedOn: "" }),
    ).toEqual({
      "lines.0.setpoints": expect.stringContaining("1373 °C: type K is defined from -270 to 1372 °C only"),
    });
    const fahrenheit = [{ ...lineInput, temperatureUnit: "F", setpoints: "600 2600" }];
    expect(problems({ lines: fahrenheit })["lines.0.setpoints"]).toContain("2600 °F");
  });

  it("refuses a class that says nothing at any setpoint, but not one that says nothing at some", () => {
    expect(problems({ lines: [{ ...lineInput, setpoints: "1100 1200" }] })["lines.0.tolerance"]).toContain(
      "class 1 of type K",
    );
    expect(problems({ lines: [{ ...lineInput, tolerance: "3" }] })).toHaveProperty(["lines.0.tolerance"]);
    expect(
      problems({ lines: [{ ...lineInput, typeLetter: "S", tolerance: "3" }] })["lines.0.tolerance"],
    ).toContain("no class 3 for type S");
    const inFahrenheit = { ...lineInput, tolerance: "3", temperatureUnit: "F" as const, setpoints: "600" };
    expect(
      problems({ lines: [inFahrenheit] })["lines.0.tolerance"],
      "as typed, and to the hundredth",
    ).toMatch(/^At 600 °F: .*, not at 315\.56 °C, so it would say nothing/);
    expect(problems({ lines: [{ ...lineInput, setpoints: "1000 1100" }] })).toEqual({});
  });

  it("takes a class of E230 and the customer's own limit in the line's unit, and wants the limit written", () => {
    const own = { ...lineInput, tolerance: "own" as const };
    expect(problems({ lines: [{ ...lineInput, tolerance: "astm-special" }] })).toEqual({});
    expect(problems({ lines: [{ ...lineInput, typeLetter: "C", tolerance: "astm-special" }] })).toEqual({
      "lines.0.tolerance": expect.stringContaining("no class special for type C"),
    });
    expect(problems({ lines: [{ ...own, ownLimit: "2.5" }] })).toEqual({});
    expect(problems({ lines: [own] })["lines.0.ownLimit"]).toContain("in °C");
    expect(problems({ lines: [{ ...own, temperatureUnit: "F" }] })["lines.0.ownLimit"]).toContain("in °F");
    for (const ownLimit of ["0", "-1", "two", "1001"])
      expect(problems({ lines: [{ ...own, ownLimit }] })).toHaveProperty(["lines.0.ownLimit"]);
    const kept = RecordOrderInput.parse(orderInput(customerId, { lines: [{ ...lineInput, ownLimit: "2" }] }));
    expect(kept.lines[0]?.ownLimit, "without the choice it is no limit").toBeNull();
  });

  it("wants the figure of its own rule", () => {
    expect(problems({ decisionRule: "guarded-binary" })).toEqual({});
    expect(problems({ decisionRule: "guarded-binary", guardBandRatio: "" })).toHaveProperty("guardBandRatio");
    const risk = { decisionRule: "target-risk", guardBandRatio: "" };
    expect(problems({ ...risk, falseAcceptancePercent: "5" })).toEqual({});
    expect(problems(risk)).toHaveProperty("falseAcceptancePercent");
    for (const falseAcceptancePercent of ["0", "51", "5%"])
      expect(problems({ ...risk, falseAcceptancePercent })).toHaveProperty("falseAcceptancePercent");
  });

  it("wants a rule that can be applied", () => {
    expect(problems({ guardBandRatio: "" })).toHaveProperty("guardBandRatio");
    expect(problems({ guardBandRatio: "3.5" })).toHaveProperty("guardBandRatio");
    expect(problems({ lines: [{ ...lineInput, tolerance: "none" }] })).toHaveProperty("decisionRule");
    expect(problems({ decisionRule: "none" })).toHaveProperty("decisionRule");
    expect(problems({ decisionRuleAgreedOn: "2026-02-30" })).toHaveProperty("decisionRuleAgreedOn");
  });
});
