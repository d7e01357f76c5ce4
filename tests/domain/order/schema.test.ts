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
    expect(problems({ lines: [{ ...lineInput, setpoints: "1000 1100" }] })).toEqual({});
  });

  it("wants a rule that can be applied", () => {
    expect(problems({ guardBandRatio: "" })).toHaveProperty("guardBandRatio");
    expect(problems({ guardBandRatio: "3.5" })).toHaveProperty("guardBandRatio");
    expect(problems({ lines: [{ ...lineInput, tolerance: "none" }] })).toHaveProperty("decisionRule");
    expect(problems({ decisionRule: "none" })).toHaveProperty("decisionRule");
    expect(problems({ decisionRuleAgreedOn: "2026-02-30" })).toHaveProperty("decisionRuleAgreedOn");
  });
});
