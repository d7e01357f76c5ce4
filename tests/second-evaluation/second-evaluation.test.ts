import { spawnSync } from "node:child_process";
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { evidenceFiles } from "./evidence-files";

/**
 * The engine against a second evaluation in another language, written from the equations: the same code twice would prove
 * only that nothing was tampered with.
 */
const script = path.join(import.meta.dirname, "evaluate.py");
const python = ["python3", "/usr/bin/python3"].find(
  (command) => spawnSync(command, ["--version"]).status === 0,
);

it("is at most 300 lines and imports nothing but the standard library", () => {
  const text = readFileSync(script, "utf8");
  expect(text.trimEnd().split("\n").length).toBeLessThanOrEqual(300);
  const imported = [...text.matchAll(/^(?:import|from) (\w+)/gm)].map(([, name]) => name);
  expect(imported.toSorted()).toEqual(["datetime", "decimal", "json", "math", "pathlib", "sys"]);
});

type Row = readonly string[];

const byPython = (files: readonly string[], which = script): readonly Row[] => {
  const { status, stdout, stderr } = spawnSync(python ?? "", ["-I", "-S", "-X", "utf8", which, ...files], {
    encoding: "utf8",
  });
  expect(stderr).toBe("");
  expect(status).toBe(0);
  return stdout
    .trimEnd()
    .split("\n")
    .map((line) => line.split("\t"));
};

/** Each is one term or sign of one equation: were the digits the same without it, the files would not try it. */
const slips: readonly (readonly [string, string, string])[] = [
  ["what meter and junction share", " + shared\n", "\n"],
  ["the junction counted as an emf of nothing", 'indicated + emf(item, junction["celsius"])', "indicated"],
  ["carried the wrong way", "+ slope * to_go", "- slope * to_go"],
  ["no curvature", "bend / 2 * to_go**2", "0.0"],
  ["the references' drift within the window", 'r["drift"] * (moment', "0.0 * (moment"],
  ["a reversal averaged as it stands", "[(t, s * v)", "[(t, v)"],
  ["the certificate's deviation", " + certified_deviation(reference, middle)", ""],
  ["degrees of freedom", "variance**2 / freedom if freedom else None", "None"],
  ["a rectangle taken for a standard uncertainty", 'line["halfWidth"] / math.sqrt(3)', 'line["halfWidth"]'],
  ["the capability", 'else [x for x in evidence.get("scope", [])', "else [x for x in []"],
  ["one digit of U rounded up by 5 %", 'exact * Decimal("0.95")', 'exact * Decimal("0")'],
  ["drift corrected by use", 'drift_of(r["item"], evidence)[0] for r', "0 for r"],
  ["the larger of two characterised temperatures", "u = max(", "u = min("],
  ["references that share nothing", "(1 if i == j else r(i, j))", "(i == j)"],
  ["lines that act from a temperature on", 'nominal < line.get("fromCelsius", -math.inf)', "False"],
  ["the voltmeter's corrections", "v + straight(nodes, v)", "v"],
  ["the shorted channel", "0.0 if is_reversed else zero", "0.0"],
  ["part of a junction shared", "len(sharing) == len(references) else part", "sharing else part"],
];

if (python)
  describe("every printed digit, computed a second time", () => {
    const folder = mkdtempSync(path.join(tmpdir(), "emfolio-second-"));
    const evidence = evidenceFiles();
    const files = evidence.map((one, at) => {
      const file = path.join(folder, `${at}.json`);
      writeFileSync(file, JSON.stringify(one));
      return file;
    });
    afterAll(() => rmSync(folder, { recursive: true }));
    const second = byPython(files);
    /** Of the long simulated runs one is enough to try the slips on. */
    const tried = files.filter((_, at) => at === 0 || evidence[at]?.title === "Invented run");
    const engine = evidence.flatMap((one, at) => {
      const outcome = evaluateEvidence(one);
      if (!outcome.ok) throw new Error(`${one.title}: ${JSON.stringify(outcome.problems)}`);
      return outcome.evaluation.points.flatMap((point) => {
        if (point.state !== "measured") return [];
        const { deviationMicrovolt, expandedMicrovolt, errorCelsius, expandedCelsius, coverageFactor } =
          point.printed;
        const digits = [deviationMicrovolt, expandedMicrovolt, errorCelsius, expandedCelsius, coverageFactor];
        return [{ type: point.type, row: [files[at] ?? "", point.sensor, point.setpoint, ...digits] }];
      });
    });
    const keyOf = ([file, sensor, setpoint]: Row) => `${file} ${sensor} ${setpoint}`;
    const inOrder = (rows: readonly Row[]) => rows.toSorted((a, b) => keyOf(a).localeCompare(keyOf(b)));

    it("of at least 100 results, of four types", () => {
      expect(engine.length).toBeGreaterThanOrEqual(100);
      expect(new Set(engine.map(({ type }) => type))).toEqual(new Set(["K", "N", "R", "S"]));
    });

    it("is the same", () => {
      expect(inOrder(second)).toEqual(inOrder(engine.map(({ row }) => row)));
    });

    it.each(slips)("is not, with a slip in the second: %s", (_, from, to) => {
      const text = readFileSync(script, "utf8");
      expect(text.split(from)).toHaveLength(2);
      const slipped = path.join(folder, "slipped.py");
      writeFileSync(
        slipped,
        text.replace(from, () => to),
      );
      copyFileSync(
        path.join(path.dirname(script), "reference-functions.json"),
        path.join(folder, "reference-functions.json"),
      );
      const third = byPython(tried, slipped);
      const right = second.filter(([file]) => tried.includes(file ?? ""));
      expect(third).toHaveLength(right.length);
      expect(third).not.toEqual(right);
    });
  });
else process.stdout.write("NOT CHECKED: the second evaluation; there is no python3 on this machine.\n");
