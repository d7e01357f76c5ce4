import { describe, expect, it } from "vitest";
import { countBranches } from "@/lib/commands/test/branch-coverage";
import { countPlaywright } from "@/lib/commands/test/browser";
import { countVitest } from "@/lib/commands/test/vitest";

type Case = { readonly fullName: string; readonly status: string };

const file = (status: string, ...cases: readonly Case[]) => ({
  name: "x.test.ts",
  status,
  assertionResults: cases,
});
const passed = { fullName: "a", status: "passed" };
const failed = { fullName: "b", status: "failed" };

describe("what npm test counts", () => {
  it.each([
    ["all passed", [file("passed", passed, passed)], 0, 2, 0],
    ["one failed", [file("failed", passed, failed)], 1, 1, 1],
    ["a file that did not load", [file("passed", passed), file("failed")], 1, 1, 1],
    ["a runner that failed although no test did", [file("passed", passed)], 1, 1, 1],
    ["nothing run", [], 0, 0, 1],
    ["all left out", [file("passed", { fullName: "c", status: "skipped" })], 0, 0, 1],
  ])("%s", (_, testResults, code, good, bad) => {
    const { passed: counted, failed: missed } = countVitest({ success: code === 0, testResults }, code);
    expect([counted, missed]).toEqual([good, bad]);
  });

  it.each([
    ["all passed", { expected: 3, unexpected: 0, flaky: 0, skipped: 0 }, 0, 3, 0],
    ["one failed", { expected: 2, unexpected: 1, flaky: 0, skipped: 0 }, 1, 2, 1],
    ["one passed at the second try", { expected: 2, unexpected: 0, flaky: 1, skipped: 0 }, 0, 2, 1],
    ["nothing run", { expected: 0, unexpected: 0, flaky: 0, skipped: 2 }, 0, 0, 1],
    [
      "a runner that failed although no test did",
      { expected: 2, unexpected: 0, flaky: 0, skipped: 0 },
      1,
      2,
      1,
    ],
  ])("in the browser: %s", (_, stats, code, good, bad) => {
    const { passed: counted, failed: missed } = countPlaywright({ errors: [], stats }, code);
    expect([counted, missed]).toEqual([good, bad]);
  });

  it("a crash of a runner as a failure", () => {
    expect(countVitest(undefined, 139)).toMatchObject({ passed: 0, failed: 1 });
    expect(countPlaywright(undefined, null)).toMatchObject({ passed: 0, failed: 1 });
  });

  it("names what failed and how it failed, without colours and to the first lines", () => {
    const told = {
      fullName: "b",
      status: "failed",
      failureMessages: ["\u001b[31mtoo late\u001b[39m\n at x"],
    };
    const { notes } = countVitest({ success: false, testResults: [file("failed", told)] }, 1);
    expect(notes).toEqual(["unit and database tests, FAILED: x.test.ts › b\n  too late\n   at x"]);
    const unloaded = { ...file("failed"), message: "no such module" };
    expect(countVitest({ success: false, testResults: [unloaded] }, 1).notes.join()).toContain(
      "x.test.ts\n  no such module",
    );
    const stats = { expected: 0, unexpected: 1, flaky: 0, skipped: 0 };
    const results = [{ errors: [{ message: Array(30).fill("line").join("\n") }] }];
    const spec = { file: "x.spec.ts", title: "a walk", ok: false, tests: [{ results }] };
    const [walk] = countPlaywright({ errors: [], stats, suites: [{ suites: [{ specs: [spec] }] }] }, 1).notes;
    expect(walk?.split("\n")).toEqual([
      "browser tests, FAILED: x.spec.ts › a walk",
      ...Array(8).fill("  line"),
    ]);
  });

  it("names the first twenty, and says how many more there are", () => {
    const many = Array.from({ length: 23 }, () => failed);
    const { notes } = countVitest({ success: false, testResults: [file("failed", ...many)] }, 1);
    expect([notes.length, notes.at(-1)]).toEqual([21, "unit and database tests: 3 more FAILED"]);
  });

  const place = { start: { line: 7 } };
  const branches = (...counts: number[]) => ({
    x: {
      path: "x.ts",
      branchMap: { 0: { loc: place, locations: counts.map(() => place) } },
      b: { 0: counts },
    },
  });

  it.each([
    ["all taken", branches(3, 1), 1, 0],
    ["one not taken", branches(3, 0), 0, 1],
    ["nothing measured", {}, 0, 1],
  ])("of branches: %s", (_, coverage, good, bad) => {
    const { passed: counted, failed: missed } = countBranches(coverage);
    expect([counted, missed]).toEqual([good, bad]);
  });

  it("names the branches that no test takes", () => {
    expect(countBranches(branches(1, 0)).notes.join()).toContain("50.00 %");
    expect(countBranches(branches(1, 0)).notes.join()).toContain("x.ts:7");
  });
});
