import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadRevision, loadRevisions } from "@/lib/data/procedure/procedure-store";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { budgetLines } from "@/lib/domain/procedure/budget-lines";
import { readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { procedures } from "@/lib/domain/run/procedure-defaults";
import { execute } from "@/lib/operations/execute";
import { changeDraft } from "@/lib/operations/procedure/change-draft";
import { draftRevision } from "@/lib/operations/procedure/draft-revision";
import { ensureProcedures } from "@/lib/operations/procedure/install";
import { makeCurrent } from "@/lib/operations/procedure/make-current";
import { recordProcedure } from "@/lib/operations/procedure/record";
import { createRun } from "@/lib/operations/run/create";
import { newRunView } from "@/lib/views/run/new-run";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { createFullRun, fullRunInput } from "../../support/full-run";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const key = "demonstration";
const readRun = (number: string) => inLaboratory((tx) => tx.run.findUniqueOrThrow({ where: { number } }));
const readRevision = async (id: string) => (await inLaboratory((tx) => loadRevision(tx, id)))!;
const revisions = () => inLaboratory((tx) => loadRevisions(tx, key));
const draft = (actor = bench.manager) => execute(draftRevision, actor, { key }, benchClock);
type Change = Omit<Parameters<typeof execute<typeof changeDraft.input, unknown>>[2], "id" | "version">;
const change = async (id: string, what: Change, actor = bench.manager) =>
  execute(changeDraft, actor, { id, version: (await readRevision(id)).version, ...what }, benchClock);
const approve = async (id: string, actor = bench.signatory) =>
  execute(makeCurrent, actor, { id, version: (await readRevision(id)).version }, benchClock);
const described = {
  change: "Repeatability of 2026 (invented).",
  verification: "Ten series, 2026-09 (invented).",
};

describe("the procedures a laboratory begins with", () => {
  it("are revision 1 of what came with the platform, word for word, and S5 stays one of them", async () => {
    for (const [name, budget] of Object.entries(procedures)) {
      const [first, ...others] = await inLaboratory((tx) => loadRevisions(tx, name));
      expect(others).toEqual([]);
      expect(first).toMatchObject({ revision: 1, state: "current", recordedById: null });
      expect(readBudgetInputs(first?.budgetInputs ?? "")).toEqual(budget);
    }
  });

  it("are brought in once: at another start nothing happens, and before there is a laboratory nothing", async () => {
    const count = () => inLaboratory((tx) => tx.procedureRevision.count());
    const before = await count();
    await ensureProcedures(benchClock);
    expect(await count()).toBe(before);
  });
});

describe("a revision", () => {
  let first: string;
  let second: string;
  let firstRun: string;

  it("is followed by the runs made while it is current, with its own figures", async () => {
    first = (await revisions())[0]!.id;
    firstRun = await createFullRun(bench);
    const run = await readRun(firstRun);
    expect(run.procedureRevisionId).toBe(first);
    expect(run.budgetInputs).toBe((await readRevision(first)).budgetInputs);
  });

  it("is drafted from the current one by those who may, one at a time", async () => {
    expect((await refusalOf(draft(bench.technician))).code).toBe("not-permitted");
    second = (await draft()).id;
    const made = await readRevision(second);
    expect(made).toMatchObject({ revision: 2, state: "draft", change: "", verification: "" });
    expect(JSON.parse(made.budgetInputs)).toEqual({
      ...JSON.parse((await readRevision(first)).budgetInputs),
      procedure: "Demonstration, revision 2",
    });
    expect((await refusalOf(draft())).code).toBe("wrong-state");
  });

  it("takes figures from the form, each in its place, and leaves the rest", async () => {
    const before = readBudgetInputs((await readRevision(second)).budgetInputs);
    const places = budgetLines(before).map(({ place }) => place);
    const lines = places.map((place) =>
      place === "sensors.K.repeatability"
        ? { place, kind: "standard" as const, value: 1.1, unit: "microvolt" as const, source: "pooled 2026" }
        : { place, kind: "keep" as const, value: null, unit: "celsius" as const, source: "" },
    );
    const rest = { correlations: [], coverage: "dominant" as const };
    const comparison = { zero: "shorted-channel" as const, channel: "120", carryOrder: 2 as const };
    const rule = { rule: "keep" as const, degree: null, limit: null, isThroughZero: false };
    const figures = {
      lines,
      ...rest,
      comparison,
      deviationFunction: { ...rule, method: "propagated" as const },
    };
    await change(second, { figures });
    const after = readBudgetInputs((await readRevision(second)).budgetInputs);
    expect(after.sensors.K?.repeatability).toMatchObject({ standard: 1.1, source: "pooled 2026" });
    expect(after).toEqual({
      ...before,
      coverage: "dominant",
      comparison: { carryOrder: 2, zero: { kind: "shorted-channel", channel: "120" } },
      sensors: {
        ...before.sensors,
        K: { ...before.sensors.K, repeatability: after.sensors.K?.repeatability },
      },
    });
  });

  it("takes the whole as text, its name aside, and names the place of each fault", async () => {
    const { budgetInputs } = await readRevision(second);
    const whole = { ...JSON.parse(budgetInputs), procedure: "something else", coverage: "student" };
    await change(second, { budgetText: JSON.stringify(whole) });
    expect(JSON.parse((await readRevision(second)).budgetInputs)).toEqual({
      ...whole,
      procedure: "Demonstration, revision 2",
    });
    const faulty = {
      ...whole,
      heaterPickup: { kind: "rectangular", halfWidth: -1, unit: "celsius", source: "x" },
    };
    const said = (text: string) => refusalOf(change(second, { budgetText: text }));
    expect((await said(JSON.stringify(faulty))).fields?.budgetText).toMatch(/^heaterPickup\.halfWidth: /);
    expect((await said(JSON.stringify({ ...whole, more: 1 }))).fields?.budgetText).toMatch(/more/);
    expect((await said("{")).fields?.budgetText).toMatch(/not JSON/);
    const policy = (text: string) => refusalOf(change(second, { policyText: text }));
    expect((await policy('{"warmUpHours":{"value":-1,"source":"invented"}}')).fields?.policyText).toMatch(
      /^warmUpHours\.value: /,
    );
    expect((await refusalOf(change(second, {}))).message).toMatch(/Nothing differs/);
  });

  it("is no choice for a run while it is a draft, and needs its verification and a second person", async () => {
    expect((await refusalOf(approve(second))).fields).toHaveProperty("verification");
    await change(second, described);
    expect((await refusalOf(approve(second, bench.manager))).message).toMatch(/second person/);
    expect((await refusalOf(approve(second, bench.technician))).code).toBe("not-permitted");
    expect(
      (await refusalOf(execute(makeCurrent, bench.signatory, { id: second, version: 1 }, benchClock))).code,
    ).toBe("changed-meanwhile");
    expect((await readRevision(first)).state).toBe("current");
  });

  it("withdraws the former when it is made current, is fixed from then on, and is told", async () => {
    await approve(second);
    expect((await revisions()).map(({ state }) => state)).toEqual(["current", "withdrawn"]);
    expect((await refusalOf(change(second, { change: "later" }))).code).toBe("wrong-state");
    expect((await refusalOf(approve(second))).code).toBe("wrong-state");
    expect((await auditSentences()).at(-1)).toBe(
      "procedure.made-current: made procedure demonstration, revision 2, current and withdrew revision 1",
    );
  });

  it("is what later runs follow; an earlier run keeps its own, and its evidence", async () => {
    const number = await createFullRun(bench);
    expect((await readRun(number)).procedureRevisionId).toBe(second);
    const evidenceOf = (run: string) => inLaboratory(async (tx) => (await loadEvidence(tx, run))?.evidence);
    expect((await evidenceOf(number))?.source).toContain("Demonstration, revision 2");
    expect((await evidenceOf(firstRun))?.source).toContain("Demonstration, revision 1");
    expect((await readRun(firstRun)).procedureRevisionId).toBe(first);
  });
});

describe("a procedure of the laboratory's own", () => {
  const record = (more: object = {}) =>
    execute(
      recordProcedure,
      bench.manager,
      { key: "own", title: "Own comparison", copyOf: "tube-furnace", ...more },
      benchClock,
    );

  it("begins as a draft, which no run can follow: not on the screen, not by its key", async () => {
    await record();
    const input = { ...(await fullRunInput(bench)), procedure: "own" };
    expect((await refusalOf(execute(createRun, bench.technician, input, benchClock))).fields).toHaveProperty(
      "procedure",
    );
    const view = await newRunView(bench.technician, benchClock());
    expect(view.procedures.map((one) => one.key).toSorted()).toEqual([
      "demonstration",
      "ea-4-02-s5",
      "tube-furnace",
    ]);
  });

  it("has a name of its own and something to be copied from", async () => {
    expect((await refusalOf(record())).fields).toHaveProperty("key");
    expect((await refusalOf(record({ key: "other", copyOf: "own" }))).fields).toHaveProperty("copyOf");
    expect((await refusalOf(record({ key: "No Key" }))).fields).toHaveProperty("key");
  });
});
