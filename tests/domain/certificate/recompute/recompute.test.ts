import { describe, expect, it } from "vitest";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { EvidenceFile } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { recompute } from "@/lib/domain/certificate/recompute/recompute";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { evidenceOfSensors } from "@/lib/domain/evidence/evidence-of-sensors";
import { Evidence } from "@/lib/domain/evidence/schema";
import { demand } from "@/lib/domain/refusal";
import { buildEvidence } from "@/tests/domain/evidence/build-evidence";
import { base, content, evidence, file, number } from "./certificate-with-evidence";

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
    // State, nine figures and four of conformity; of a row not measured no conformity.
    expect(comparisons.filter(({ table }) => table === "Results")).toHaveLength(14 * (rows - 1) + 10);
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

describe("a lot annealed between two sets, with its budgets", () => {
  const measured = (errorCelsius: number) => {
    const scene = Evidence.parse(buildEvidence({ sensors: ["N", "N"], nominals: [600], errorCelsius }));
    const evaluated = evaluateEvidence(scene);
    if (!evaluated.ok) throw new Error(JSON.stringify(evaluated.problems));
    return { scene, points: evaluated.evaluation.points };
  };
  const runs = [
    { kind: "as-received" as const, run: "R-2026-0003", ...measured(0.9) },
    { kind: "after-anneal" as const, run: "R-2026-0004", ...measured(0.4) },
  ];
  const members = ["X1", "X2"].flatMap((tag) =>
    runs.map(({ kind, run, points }) => ({
      kind,
      parts: {
        ...base,
        sensor: { ...base.sensor, tag, typeLetter: "N" },
        order: { ...base.order, setpoints: [{ typed: "1112", celsius: 600 }] },
        run: { ...base.run, number: run },
        build: { lot: "7", roll: "12", end: tag === "X1" ? ("first" as const) : ("second" as const) },
        set: kind,
        hasOtherSet: true,
        points: points.filter(({ sensor }) => sensor === tag),
      },
      ...{ sensorId: tag, customerId: "c", runId: run, evaluationId: run },
    })),
  );
  const lot = demand(
    composeBundle(
      {
        ...{
          members,
          filedUnder: members[1]!,
          repeats: [],
          earlierCounts: [],
          findings: [],
          performerIds: [],
        },
        asks: { budget: true, evidence: true },
      },
      { number, issuedOn: "2026-06-02", signatory: { name: "Sam Signer", role: "Signatory" }, exception: "" },
    ),
  );
  const parts: EvidenceFile["parts"] = runs.map(({ kind, run, scene }) => ({
    items: ["X1", "X2"].map((tag) => ({ tag, set: kind })),
    ...{ run, evaluation: 1, engineVersion: "1" },
    ...{ inputsDigest: base.evaluation.inputsDigest, blocksDigest: "0".repeat(64), blocks: [] },
    evidence: evidenceOfSensors(scene, ["X1", "X2"]),
  }));
  const whole: EvidenceFile = { ...file, parts };

  it("finds every figure of its tables again: four sets, changes, lot and budgets", () => {
    const { problems, differences, comparisons } = recompute(lot, whole);
    expect(problems).toEqual([]);
    expect(differences).toEqual([]);
    const of = (start: string) => comparisons.filter(({ table }) => table.startsWith(start)).length;
    // Fourteen in °C, and six of them once more in °F, as ordered.
    expect(of("Results, ")).toBe(4 * (14 + 6));
    // Two items, the change and its U; one setpoint of the lot with its five figures.
    expect(of("Change by annealing")).toBe(2 * 2);
    expect(of("Lot")).toBe(5);
    // One roll, both its ends, their average and half range, in °C and in °F.
    expect(of("Rolls, Lot 7, roll 12")).toBe(4 + 4);
    expect(of("Budget, ")).toBe(lot.budgets!.reduce((sum, { lines }) => sum + 3 + 2 * lines.length, 0));
    expect(lot.budgets).toHaveLength(4);
  });

  it.each([
    ["the average", "Lot", (c: CertificateContent) => (c.lot!.rows[0]!.averageErrorCelsius = "5")],
    [
      "a roll's average in °F",
      "Rolls, Lot 7, roll 12",
      (c: CertificateContent) => (c.rolls!.of[0]!.rows[0]!.fahrenheit!.average = "5"),
    ],
    [
      "a change",
      "Change by annealing, X2",
      (c: CertificateContent) => (c.changes![1]!.rows[0]!.changeCelsius = "5"),
    ],
    [
      "a line of a budget",
      "Budget, X1",
      (c: CertificateContent) => (c.budgets![0]!.lines[1]!.effectCelsius = "5"),
    ],
  ])("shows where %s is printed otherwise", (_, table, work) => {
    const copy = structuredClone(lot);
    work(copy);
    const { differences } = recompute(copy, whole);
    expect(differences.map((one) => one.table)).toEqual([table]);
  });

  it("compares no figure that rests on several results while one of them is missing", () => {
    const { problems, comparisons } = recompute(lot, { ...whole, parts: parts.slice(1) });
    expect(problems).toEqual([
      "the evidence has nothing of X1 in run R-2026-0003",
      "the evidence has nothing of X2 in run R-2026-0003",
    ]);
    expect(comparisons.some(({ table }) => table === "Lot")).toBe(false);
  });
});
