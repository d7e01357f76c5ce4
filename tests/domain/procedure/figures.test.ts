import { describe, expect, it } from "vitest";
import { budgetLines, correlationPlaces } from "@/lib/domain/procedure/budget-lines";
import { changedFigures } from "@/lib/domain/procedure/figures";
import { Figures } from "@/lib/domain/procedure/figures-schema";
import { typedFigures } from "@/lib/domain/procedure/typed-figures";
import { BudgetInputs } from "@/lib/domain/run/budget-inputs";
import { procedures } from "@/lib/domain/run/procedure-defaults";

const budget = BudgetInputs.parse(procedures["tube-furnace"]);
const typed = typedFigures(budget);
const result = (change: Partial<Figures>, from = budget) =>
  changedFigures(from, Figures.parse({ ...typed, ...change }));
const changed = (change: Partial<Figures>, from = budget): BudgetInputs => {
  const outcome = result(change, from);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
};
const fields = (change: Partial<Figures>) => {
  const outcome = result(change);
  return outcome.ok ? [] : Object.keys(outcome.refusal.fields ?? {});
};
const withLine = (place: string, line: Partial<Figures["lines"][number]>) => ({
  lines: typed.lines.map((one) => (one.place === place ? { ...one, ...line } : one)),
});
const at = (place: string) => typed.lines.findIndex((one) => one.place === place);

describe("the figures of a procedure", () => {
  it("are all there: three of the run, three of each type, five correlations", () => {
    expect(typed.lines).toHaveLength(3 + 3 * 8);
    expect(typed.correlations.map(({ place }) => place)).toEqual(correlationPlaces.map(([place]) => place));
  });

  it.each(Object.entries(procedures))("of %s sent back as they are shown change nothing", (_, procedure) => {
    const whole = BudgetInputs.parse(procedure);
    const outcome = changedFigures(whole, Figures.parse(typedFigures(whole)));
    expect(outcome).toEqual({ ok: true, value: whole });
  });

  it("keep of a line what the form does not show", () => {
    const from = BudgetInputs.parse({
      ...budget,
      stability: {
        kind: "standard",
        standard: 0.02,
        unit: "celsius",
        degreesOfFreedom: 7,
        fromCelsius: 900,
        source: "a",
      },
    });
    const stability = changed(withLine("stability", { kind: "standard", value: 0.03 }), from).stability;
    expect(stability).toMatchObject({ standard: 0.03, degreesOfFreedom: 7, fromCelsius: 900 });
    const other = changed(withLine("stability", { kind: "rectangular", value: 0.03 }), from).stability;
    expect(other).toMatchObject({ kind: "rectangular", halfWidth: 0.03, fromCelsius: 900 });
    expect(other).not.toHaveProperty("degreesOfFreedom");
    expect(other).not.toHaveProperty("standard");
  });

  it("state inhomogeneity as a share of the tolerance, or as nothing with its reason", () => {
    const share = { kind: "tolerance-share", value: 0.2, unit: "class-2", source: "20 % rule" } as const;
    expect(changed(withLine("sensors.K.inhomogeneity", share)).sensors.K?.inhomogeneity).toEqual({
      kind: "tolerance-share",
      share: 0.2,
      toleranceClass: "2",
      source: "20 % rule",
    });
    const none = { kind: "zero", value: null, source: "no lead" } as const;
    expect(changed(withLine("sensors.K.lead", none)).sensors.K?.lead).toEqual({
      kind: "zero",
      reason: "no lead",
    });
  });

  it("are refused at their field: a share where none can be, a line that is gone, an expanded one without its k", () => {
    const share = { kind: "tolerance-share", value: 0.2, unit: "class-2", source: "x" } as const;
    expect(fields(withLine("sensors.K.lead", share))).toEqual([
      `figures.lines.${at("sensors.K.lead")}.value`,
    ]);
    const expanded = { kind: "expanded", value: 1, unit: "celsius", source: "x" } as const;
    expect(fields(withLine("stability", expanded))).toEqual([`figures.lines.${at("stability")}.value`]);
    expect(fields(withLine("stability", { place: "sensors.C.lead" }))).toEqual([
      `figures.lines.${at("stability")}.value`,
    ]);
    const gone = { place: "__proto__", coefficient: 0, reason: "x" };
    expect(fields({ correlations: [gone] })).toEqual(["figures.correlations.0.coefficient"]);
  });

  it("say in the form what is missing", () => {
    const issues = (line: object) =>
      Figures.safeParse({ ...typed, lines: [{ ...typed.lines[0], ...line }] }).error?.issues.map(({ path }) =>
        path.join("."),
      );
    expect(issues({ kind: "standard", value: null, unit: "celsius", source: "x" })).toEqual([
      "lines.0.value",
    ]);
    expect(issues({ kind: "zero", value: null, source: "" })).toEqual(["lines.0.source"]);
    expect(issues({ kind: "standard", value: 1, unit: "class-1", source: "x" })).toEqual(["lines.0.unit"]);
    expect(issues({ kind: "tolerance-share", value: 1, unit: "celsius", source: "x" })).toEqual([
      "lines.0.unit",
    ]);
    expect(issues({ kind: "keep", value: null, source: "" })).toBeUndefined();
  });

  it("take one rule of the deviation function for every type, none, or leave each its own", () => {
    const rule = {
      rule: "f-test",
      degree: 3,
      limit: 0.95,
      isThroughZero: true,
      method: "propagated",
    } as const;
    const all = changed({ deviationFunction: rule });
    for (const inputs of Object.values(all.sensors))
      expect(inputs?.deviationFunction?.degreeRule).toEqual({
        kind: "f-test",
        maximumDegree: 3,
        probability: 0.95,
      });
    const none = changed({ deviationFunction: { ...rule, rule: "none" } }, all);
    expect(Object.values(none.sensors).some((inputs) => inputs?.deviationFunction)).toBe(false);
    expect(changed({ deviationFunction: { ...rule, rule: "keep" } }, all)).toEqual(all);
    expect(fields({ deviationFunction: { ...rule, degree: null, limit: null } })).toEqual([
      "figures.deviationFunction.degree",
      "figures.deviationFunction.limit",
    ]);
    expect(fields({ deviationFunction: { ...rule, limit: 1 } })).toEqual(["figures.deviationFunction.limit"]);
  });

  it("carry correlations with their reasons, the way k is found and the zero", () => {
    const correlations = [{ place: "references.own", coefficient: 0.5, reason: "measured together" }];
    const comparison = { zero: "shorted-channel", channel: "120", carryOrder: 1 } as const;
    const after = changed({ correlations, comparison, coverage: "monte-carlo" });
    expect(after.correlation.references.own).toEqual({ coefficient: 0.5, reason: "measured together" });
    expect(after.correlation.voltmeter).toEqual(budget.correlation.voltmeter);
    expect(after.comparison).toEqual({ carryOrder: 1, zero: { kind: "shorted-channel", channel: "120" } });
    expect(after.coverage).toBe("monte-carlo");
  });

  it("stand where they stand", () => {
    expect(budgetLines(budget).find(({ place }) => place === "sensors.S.lead")?.line).toEqual(
      budget.sensors.S?.lead,
    );
  });
});
