import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { canonicalContent, contentHash } from "@/lib/domain/certificate/content-hash";
import { decisionRuleText } from "@/lib/domain/certificate/decision-rule-text";
import { reviewedForm, unissued } from "@/lib/domain/certificate/reviewed-form";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "../../support/certificate-parts";

const issue = {
  number: "C-2026-0001",
  issuedOn: "2026-03-05",
  signatory: { name: "Sam Signer", role: "Signatory" },
  exception: "",
};
const compose = (change: Parameters<typeof inventedParts>[0] = {}) =>
  demand(composeCertificate(inventedParts(change), issue));
const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest();

describe("the items of ISO/IEC 17025:2017", () => {
  const content = compose();
  const items: Record<string, (c: CertificateContent) => unknown> = {
    "7.8.2.1 a title": (c) => c.title,
    "7.8.2.1 b laboratory and address": (c) => [c.laboratory.name, ...c.laboratory.addressLines],
    "7.8.2.1 c place": (c) => c.laboratory.placeOfPerformance,
    "7.8.2.1 d identification": (c) => c.number,
    "7.8.2.1 e customer": (c) => [c.customer.name, c.customer.contact],
    "7.8.2.1 f method": (c) => [c.method.name, c.method.description],
    "7.8.2.1 g item and condition": (c) => [c.item.tag, c.item.serial, c.item.condition],
    "7.8.2.1 h receipt": (c) => c.receivedOn,
    "7.8.2.1 i performance": (c) => [c.performedFrom, c.performedTo],
    "7.8.2.1 j issue": (c) => c.issuedOn,
    "7.8.2.1 k sampling": (c) => c.sampling,
    "7.8.2.1 l only these items": (c) => c.statements.find((s) => s.includes("relate only to the item")),
    "7.8.2.1 m results": (c) => c.rows.map((row) => row.setpoint),
    "7.8.2.1 n deviations": (c) => c.deviations[0],
    "7.8.2.1 o authorised by": (c) => [c.authorisedBy.name, c.authorisedBy.on],
    "7.8.2.1 p external results": (c) => c.externalResults,
    "7.8.4.1 a uncertainty": (c) => c.rows[0]?.expandedCelsius,
    "7.8.4.1 b conditions": (c) => c.conditions,
    "7.8.4.1 c traceability": (c) => [c.traceabilityStatement, c.standards[0]?.calibrationCertificate],
    "7.8.4.1 d adjustment": (c) => c.adjustment,
    "7.8.4.1 e conformity": (c) => c.rows[0]?.conformity.state,
    "7.8.6.2 specification, rule, risk": (c) => [
      c.conformity?.specification,
      c.conformity?.rule,
      c.conformity?.risk,
    ],
  };
  for (const [name, read] of Object.entries(items))
    it(`holds ${name}`, () => {
      const value = [read(content)].flat();
      expect(value.length).toBeGreaterThan(0);
      for (const text of value) expect(text).toMatch(/\S/);
    });

  it("recommends no recalibration interval (7.8.4.3)", () => {
    expect(JSON.stringify(content)).not.toMatch(/recalibrat\w+ (is )?(due|on|before)|next calibration/i);
  });
});

describe("composing", () => {
  it("keeps the printed strings of the evaluation and the setpoint as the customer typed it", () => {
    const [first, second, third] = compose().rows;
    expect(first).toMatchObject({
      setpoint: "600 °F",
      nominalCelsius: "315.6",
      errorCelsius: "0.7",
      correctionCelsius: "-0.7",
      expandedCelsius: "1.3",
      coverageFactor: "2.00",
      conformity: { state: "conditional-pass", tolerance: "± 1.3", probability: "99.9 %" },
      remark: "",
    });
    expect(second).toMatchObject({ state: "invalid", setpoint: "1200 °F", errorCelsius: "", plot: null });
    expect(third).toMatchObject({ setpoint: "900 °C", remark: "Measured in addition to the order." });
  });

  it("says what is missing, whether invalid or never run", () => {
    const parts = inventedParts();
    const content = compose({ points: [parts.points[0]!] });
    expect(content.deviations).toEqual(["Ordered at 1200 °F: not part of this run."]);
    expect(compose().deviations).toEqual(["At 648.89 °C no result: invalid, open circuit"]);
  });

  it("states conformity only where it was asked for", () => {
    const { order } = inventedParts();
    const content = compose({ order: { ...order, decisionRule: { kind: "none" } } });
    expect(content.conformity).toBeNull();
    expect(content.rows.map((row) => row.conformity)).toEqual(
      Array.from({ length: 3 }, () => ({ state: "no-statement", tolerance: "", probability: "" })),
    );
    expect(content.rows[0]?.plot?.toleranceCelsius).toBeNull();
  });

  it("refuses another rule, other digits, nothing measured, no reference and a calibration out of date", () => {
    const parts = inventedParts();
    const refusal = (change: Parameters<typeof inventedParts>[0]) =>
      composeCertificate(inventedParts(change), issue);
    const refused = { ok: false, refusal: { code: "rule" } };
    expect(
      refusal({
        evaluation: { ...parts.evaluation, decisionRule: { kind: "guarded", guardBandRatio: 0.83 } },
      }),
    ).toMatchObject(refused);
    expect(refusal({ evaluation: { ...parts.evaluation, uncertaintyDigits: 1 } })).toMatchObject(refused);
    expect(refusal({ points: [parts.points[1]!] })).toMatchObject(refused);
    expect(refusal({ standards: parts.standards.slice(2) })).toMatchObject(refused);
    const [reference, ...rest] = parts.standards;
    for (const change of [{ dueOn: "2026-03-02" }, { performedOn: "2026-03-03" }])
      expect(refusal({ standards: [{ ...reference!, ...change }, ...rest] })).toMatchObject({
        ok: false,
        refusal: { code: "rule", message: expect.stringContaining("R-S1") },
      });
    expect(refusal({ standards: [{ ...reference!, dueOn: "2026-03-03" }, ...rest] }).ok).toBe(true);
  });

  it("names instruments without a certificate in the traceability statement", () => {
    const parts = inventedParts();
    const standards = parts.standards.map((standard) =>
      standard.role === "scanner"
        ? { ...standard, calibrationCertificate: "", performedOn: "", dueOn: "" }
        : standard,
    );
    expect(compose({ standards }).traceabilityStatement).toMatch(
      /No calibration certificate is held for X-1/,
    );
  });
});

describe("the reviewed form", () => {
  it("is the same for every number, day, signatory and exception", () => {
    const before = demand(composeCertificate(inventedParts(), null));
    const after = demand(composeCertificate(inventedParts(), { ...issue, exception: "by policy" }));
    expect(before.number).toBe(unissued.number);
    expect(canonicalContent(reviewedForm(after))).toBe(canonicalContent(before));
    expect(contentHash(after, sha256)).not.toEqual(contentHash(before, sha256));
  });

  it("changes with anything else", () => {
    const seen = new Set<string>();
    const parts = inventedParts();
    for (const change of [
      {},
      { customer: { ...parts.customer, addressLines: ["9 Invented Lane"] } },
      { evaluation: { ...parts.evaluation, inputsDigest: "cd".repeat(32) } },
      { run: { ...parts.run, hasTypedReadings: true } },
    ])
      seen.add(
        Buffer.from(contentHash(demand(composeCertificate(inventedParts(change), null)), sha256)).toString(
          "hex",
        ),
      );
    expect(seen.size).toBe(4);
  });
});

describe("the specification of a statement of conformity (7.8.6.2 b)", () => {
  const { order } = inventedParts();
  const specification = (toleranceStandard: string, toleranceClass: string) =>
    compose({ order: { ...order, toleranceStandard, toleranceClass } }).conformity?.specification;
  it.each([
    ["IEC 60584-1:2013", "1", "IEC 60584-1:2013, tolerance class 1; stated"],
    ["ASTM E230/E230M", "special", "ASTM E230/E230M, special tolerances; stated"],
    ["customer's own limit", "± 5 °F", "The customer’s own limit, ± 5 °F; stated"],
  ])("%s %s", (standard, toleranceClass, words) => {
    expect(specification(standard, toleranceClass)).toMatch(new RegExp(`^${words}`));
  });

  it("stands with the rule that was agreed: a target risk in percent, pass or fail", () => {
    const rule = { kind: "target-risk", falseAcceptance: 0.05, isBinary: true } as const;
    const parts = inventedParts();
    const { conformity } = compose({
      order: { ...order, decisionRule: rule },
      evaluation: { ...parts.evaluation, decisionRule: rule },
    });
    expect(conformity?.risk).toContain("5 %");
    expect(conformity?.rule).toContain("Fail: it lies outside.");
    expect(conformity?.rule).not.toContain("onditional");
  });
});

describe("risk of a decision rule (ILAC-G8:09/2019)", () => {
  it.each([
    [3, "1 in 1 000 000"],
    [1.5, "0.16 %"],
    [1, "2.5 %"],
    [0.9, "5 %"],
    [0.83, "5 %"],
    [0.5, "50 %"],
  ])("guard band %s U: at most %s", (guardBandRatio, bound) => {
    expect(decisionRuleText({ kind: "guarded", guardBandRatio })?.risk).toContain(
      `at most ${bound}`.replace("at most 1 in", "at most about 1 in"),
    );
  });
  it("has no text where no statement is agreed", () => {
    expect(decisionRuleText({ kind: "none" })).toBeNull();
  });
});
