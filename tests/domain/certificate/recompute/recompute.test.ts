import { describe, expect, it } from "vitest";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { EvidenceFile } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { recompute } from "@/lib/domain/certificate/recompute/recompute";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { Evidence } from "@/lib/domain/evidence/schema";
import { demand } from "@/lib/domain/refusal";
import { askFunction, lineThroughZero } from "@/tests/domain/evidence/ask-function";
import { inventedParts } from "@/tests/support/certificate-parts";

const over = [300, 500, 700, 900];
const asked = askFunction({
  over,
  choice: { ...lineThroughZero, table: { unit: "celsius", step: 100 } },
});
const evidence = Evidence.parse({
  ...asked,
  states: [{ sensor: "X1", setpoint: "500", state: "invalid", reason: "open for a while" }],
});
const outcome = evaluateEvidence(evidence);
if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
const { points, functions } = outcome.evaluation;
const base = inventedParts();
const number = "C-2026-0001";

/** As it would be signed off: composed from what the evidence gives. */
const content = demand(
  composeCertificate(
    {
      ...base,
      order: {
        ...base.order,
        temperatureUnit: "C",
        setpoints: over.map((celsius) => ({ typed: `${celsius}`, celsius })),
      },
      sensor: { ...base.sensor, tag: "X1", typeLetter: "N" },
      points,
      deviationFunction: { ok: true, value: functions[0]! },
    },
    { number, issuedOn: "2026-06-02", signatory: { name: "Sam Signer", role: "Signatory" }, exception: "" },
  ),
);
const file: EvidenceFile = {
  format: "emfolio-certificate-evidence",
  version: 1,
  certificate: number,
  parts: [
    {
      ...{ tag: "X1", set: "as-received", run: content.run.number, evaluation: content.evidence.evaluation },
      ...{ engineVersion: "1", inputsDigest: content.evidence.inputsDigest, evidence },
      ...{ blocksDigest: "0".repeat(64), blocks: [] },
    },
  ],
};
const changed = (work: (copy: CertificateContent) => void): CertificateContent => {
  const copy = structuredClone(content);
  work(copy);
  return copy;
};

describe("recomputing a certificate from its evidence", () => {
  it("finds every printed figure again: results, function, coefficients and table", () => {
    const { problems, differences, comparisons } = recompute(content, file);
    expect(problems).toEqual([]);
    expect(differences).toEqual([]);
    const tables = new Set(comparisons.map(({ table }) => table));
    expect(tables).toEqual(new Set(["Results", "Deviation function"]));
    const rows = content.rows.length;
    // State, nine figures and three of conformity; of a row not measured no conformity.
    expect(comparisons.filter(({ table }) => table === "Results")).toHaveLength(13 * (rows - 1) + 10);
    const { coefficients, rows: table } = content.function!;
    expect(comparisons.filter(({ table: name }) => name === "Deviation function")).toHaveLength(
      5 + coefficients.length + 3 * table.length,
    );
  });

  it.each([
    ["an error", "Results", "Error, °C", (c: CertificateContent) => (c.rows[2]!.errorCelsius = "0.11")],
    ["an uncertainty", "Results", "U, °C", (c: CertificateContent) => (c.rows[0]!.expandedCelsius = "9.9")],
    ["a state", "Results", "State", (c: CertificateContent) => (c.rows[0]!.state = "invalid")],
    [
      "a statement of conformity",
      "Results",
      "Conformity",
      (c: CertificateContent) => (c.rows[0]!.conformity.state = "fail"),
    ],
    [
      "a coefficient",
      "Deviation function",
      "µV/°C",
      (c: CertificateContent) => (c.function!.coefficients[1]!.value = "1e-9"),
    ],
    [
      "a correction in the table",
      "Deviation function",
      "Correction",
      (c: CertificateContent) => (c.function!.rows[1]!.correction = "7"),
    ],
  ])("shows where %s is printed otherwise", (_, table, column, work) => {
    const { differences } = recompute(changed(work), file);
    expect(differences.map((one) => [one.table, one.column])).toEqual([[table, column]]);
  });

  it("shows figures of a row that the evidence does not have", () => {
    const doubled = changed((copy) =>
      copy.rows.push({ ...copy.rows[0]!, setpoint: "950 °C", nominalCelsius: "950" }),
    );
    const { differences } = recompute(doubled, file);
    expect(new Set(differences.map(({ row }) => row))).toEqual(new Set(["950 °C"]));
    expect(differences.every(({ recomputed }) => recomputed === "")).toBe(true);
  });

  it("confirms nothing where paper and evidence do not belong together", () => {
    expect(
      recompute(
        changed((copy) => (copy.number = "C-2026-0002")),
        file,
      ).problems[0],
    ).toMatch(/not of C-2026-0002/);
    expect(
      recompute(
        changed((copy) => (copy.evidence.inputsDigest = "cd".repeat(32))),
        file,
      ),
    ).toMatchObject({
      problems: [expect.stringMatching(/another evaluation/)],
      comparisons: [],
    });
    expect(
      recompute(
        changed((copy) => (copy.item.tag = "X9")),
        file,
      ).problems[0],
    ).toMatch(/nothing of X9/);
    const broken = {
      ...file,
      parts: [
        {
          ...file.parts[0]!,
          evidence: { ...evidence, windows: [{ ...evidence.windows[0]!, setpoint: "?" }] },
        },
      ],
    };
    expect(recompute(content, broken).problems[0]).toMatch(/cannot be evaluated/);
  });

  it("tells readings that were changed by their figures", () => {
    const copy = structuredClone(file);
    const [channel] = copy.parts[0]!.evidence.scans.channels.filter(({ channel: name }) => name === "102");
    channel!.microvolts = channel!.microvolts.map((value) => value + 50);
    const { differences } = recompute(content, copy);
    expect(new Set(differences.map(({ column }) => column))).toContain("Error, °C");
  });
});
