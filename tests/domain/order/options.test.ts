import { describe, expect, it } from "vitest";
import { marksText, noMarks } from "@/lib/domain/order/line-marks";
import { draftOfOptions } from "@/lib/domain/order/line-options-draft";
import { LineOptions, lineOptionPhrases, readLineOptions } from "@/lib/domain/order/options";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import { lineInput, orderInput } from "../../support/orders";

const customerId = "00000000-0000-4000-8000-000000000001";
const providerId = "00000000-0000-4000-8000-000000000002";
const parsed = (line: object) =>
  RecordOrderInput.safeParse({ ...orderInput(customerId), lines: [{ ...lineInput, ...line }] });
const problems = (line: object): Record<string, string> =>
  Object.fromEntries(
    (parsed(line).error?.issues ?? []).map((issue) => [issue.path.slice(2).join("."), issue.message]),
  );
const lineOf = (line: object) => parsed(line).data?.lines[0];

describe("what a line asks for beyond its points", () => {
  it("is nothing where nothing is written", () => {
    expect(lineOf({})).toMatchObject({ options: LineOptions.parse({}), marks: noMarks });
    expect(lineOptionPhrases(LineOptions.parse({}), "C")).toEqual([]);
    expect(marksText(noMarks, "")).toBe("");
  });

  it("wants the anneal of a set after annealing, and none without one", () => {
    const anneal = { annealCelsius: "450", annealHours: "2" };
    for (const sets of ["after-anneal", "both"] as const) {
      expect(lineOf({ sets, ...anneal })?.options).toMatchObject({
        sets,
        anneal: { celsius: 450, hours: 2 },
      });
      expect(Object.keys(problems({ sets })).sort()).toEqual(["annealCelsius", "annealHours"]);
    }
    expect(problems(anneal)).toEqual({ sets: expect.stringContaining("as received only") });
  });

  it("keeps an anneal within what is an anneal, and below what the sensors may see", () => {
    const both = { sets: "both", annealHours: "2" };
    for (const annealCelsius of ["99", "1501", "hot", "-450", "4e2"])
      expect(problems({ ...both, annealCelsius })).toHaveProperty("annealCelsius");
    for (const annealCelsius of ["100", "1500"]) expect(problems({ ...both, annealCelsius })).toEqual({});
    for (const annealHours of ["0", "201", "long"])
      expect(problems({ sets: "both", annealCelsius: "450", annealHours })).toHaveProperty("annealHours");
    const limit = { ...both, maximum: "1000" };
    expect(problems({ ...limit, annealCelsius: "1000" })).toEqual({});
    expect(problems({ ...limit, annealCelsius: "1001" }).annealCelsius).toContain("Nothing above");
  });

  it("tabulates in the line's unit, between two setpoints at least", () => {
    expect(lineOf({ tableStep: "10" })?.options.correctionTable).toEqual({ step: 10 });
    expect(problems({ tableStep: "10", setpoints: "600" }).tableStep).toContain("has one");
    expect(problems({ tableStep: "10", setpoints: "" }), "not known yet").toEqual({});
    for (const tableStep of ["0", "501", "2.5", "ten"])
      expect(problems({ tableStep })).toHaveProperty("tableStep");
    expect(problems({ tableStep: "0", temperatureUnit: "F" }).tableStep).toContain("°F");
  });

  it("is marked where it is done elsewhere or by others", () => {
    expect(problems({ performedAt: "customer-site" }).siteAddress).toContain("7.8.2.1 c");
    const site = {
      performedAt: "customer-site",
      siteAddress: "Works Road 1",
      providerId,
      groupName: "zone 3",
    };
    const marks = lineOf(site)?.marks ?? expect.fail("refused");
    expect(marks).toEqual(site);
    expect(marksText(marks, "Calibrators")).toBe(
      "Done at the customer’s site: Works Road 1. Subcontracted to Calibrators.",
    );
    expect(lineOf({ siteAddress: "typed and left" })?.marks.siteAddress).toBe("");
    expect(problems({ providerId: "somebody" })).toHaveProperty("providerId");
  });

  it("comes back as it was typed, and is told in phrases", () => {
    const typed = {
      ...{ groupName: "zone 3", sets: "both", annealCelsius: "450", annealHours: "2", tableStep: "25" },
      ...{ coefficients: "on", budget: "on", evidence: "on", report: "per-lot" },
      ...{ countingRule: "earlier-counts-if-they-agree", performedAt: "customer-site" },
      ...{ siteAddress: "Works Road 1", providerId },
      ...{ language: "en-de", form: "full", formAgreement: "" },
    };
    const line = lineOf(typed) ?? expect.fail("refused");
    expect(draftOfOptions(line.options, line.marks)).toEqual(typed);
    expect(readLineOptions(JSON.stringify(line.options))).toEqual(line.options);
    expect(lineOptionPhrases(line.options, "F")).toEqual([
      "Measured as received, then annealed at 450 °C for 2 h, then measured again",
      "Table of corrections every 25 °F, between the lowest and the highest calibrated setpoint only",
      "Coefficients of the deviation function",
      "Uncertainty budget on the certificate",
      "Evidence file attached",
      "One certificate for the lot",
      "If measured again: the earlier one counts, if they agree within their U",
      "Certificate in English and German",
    ]);
    expect(draftOfOptions(LineOptions.parse({}), noMarks)).toMatchObject({ tableStep: "", coefficients: "" });
  });

  it("takes a simplified certificate only with its agreement, and never with what it leaves out", () => {
    expect(problems({ form: "simplified" })).toHaveProperty("formAgreement");
    const agreed = { form: "simplified", formAgreement: "letter of 2026-02-20" };
    for (const lost of [{ tableStep: "25" }, { coefficients: "on" }, { budget: "on" }])
      expect(problems({ ...agreed, ...lost })).toHaveProperty("form");
    expect(problems({ form: "full", formAgreement: "letter of 2026-02-20" })).toHaveProperty("form");
    const line = lineOf(agreed) ?? expect.fail("refused");
    expect(line.options).toMatchObject(agreed);
    expect(draftOfOptions(line.options, line.marks)).toMatchObject(agreed);
    expect(lineOptionPhrases(line.options, "C")).toContain(
      "Simplified certificate, agreed: letter of 2026-02-20",
    );
  });

  it("asks for English alone and the full form unless it says otherwise", () => {
    expect(readLineOptions("{}")).toMatchObject({ language: "en", form: "full" });
    expect(problems({ language: "fr" })).toHaveProperty("language");
  });
});
