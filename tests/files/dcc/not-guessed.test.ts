import { describe, expect, it } from "vitest";
import { good } from "./change-passage";
import { deviation, emfColumn, proposalsFor, reference } from "./proposals";

describe("what is not guessed", () => {
  it("k that differs from row to row", () => {
    const offer = reference(
      good.replaceAll("<si:coverageFactorXMLList>2<", "<si:coverageFactorXMLList>2 2 2 2 2 2.1<"),
      "R",
    );
    expect(offer.overall).toBeNull();
    expect(offer.remarks.join(" ")).toContain("differs from value to value");
  });

  it("U where the file gives none", () => {
    const without = good.replaceAll(
      /\s*<si:measurementUncertaintyUnivariateXMLList>[\s\S]*?<\/si:measurementUncertaintyUnivariateXMLList>/g,
      "",
    );
    const offer = reference(without, "R");
    expect(offer.overall).toBeNull();
    expect(offer.rows.every(({ uncertainty }) => uncertainty === null)).toBe(true);
    expect(offer.remarks.join(" ")).toContain("enter U and k");
  });

  it("a row without a value, or outside the reference function", () => {
    expect(reference(good.replace("-1.1 -2.0", "NaN -2.0"), "R").rows).toHaveLength(5);
    const hot = good.replace("1423.15", "2073.15").replace("1150.00", "1800.00").replace(deviation, "");
    const offer = reference(hot, "R");
    expect(offer.rows).toHaveLength(5);
    expect(offer.remarks.join(" ")).toContain("Row 6 was left out: 1800 °C lies outside");
  });

  it("the order of the rows, and a temperature given twice", () => {
    const turned = good.replace("523.15 673.15", "673.15 523.15").replace("250.00 400.00", "400.00 250.00");
    const offer = reference(turned, "R");
    expect(
      offer.rows
        .slice(0, 2)
        .map(({ celsius, deviationMicrovolt }) => [celsius.value, deviationMicrovolt.value]),
    ).toEqual([
      [250, -2],
      [400, -1.1],
    ]);
    expect(offer.remarks.join(" ")).toContain("sorted from cold to hot");
    const twice = good.replace("523.15 673.15", "673.15 673.15").replace("250.00 400.00", "400.00 400.00");
    expect(reference(twice, "R").remarks.join(" ")).toContain("400 °C stands in more than one row");
  });

  it("a junction that was not at 0 °C, and items beside ours", () => {
    const warm = good.replace(/0\.00<\/si:value>/, "23.0</si:value>");
    expect(reference(warm, "R").remarks.join(" ")).toContain("stood at 23.0 \\degreecelsius");
    const item = good.slice(good.indexOf("<dcc:item id"), good.indexOf("</dcc:item>") + "</dcc:item>".length);
    expect(
      reference(good.replace(item, item + item.replace('id="item"', 'id="other"')), "R").remarks.join(" "),
    ).toContain("has 2 items");
  });

  it("columns of another kind: the reason names what was found", () => {
    const ohms = good.replace(deviation, "").replace(emfColumn, emfColumn.replace("\\micro\\volt", "\\ohm"));
    const { offers, reasons } = proposalsFor(ohms, "R");
    expect(offers).toEqual([]);
    expect(reasons[0]?.message).toContain("Emf (\\ohm)");
    expect(reasons[0]?.place.path).toMatch(/\/data\/list$/);
  });
});
