import { describe, expect, it } from "vitest";
import { checkCharts } from "@/lib/domain/equipment/check-chart";
import { decideEntry, stateAfter } from "@/lib/domain/equipment/decide-entry";
import { lastGoodEvidence } from "@/lib/domain/equipment/last-good-evidence";
import type { EntryFigures, LogEntry } from "@/lib/domain/equipment/logbook";
import { readServicePolicy } from "@/lib/domain/equipment/service-policy";
import {
  type ServiceStanding,
  serviceFindings,
  serviceProblem,
} from "@/lib/domain/equipment/service-problem";
import { isVerified, serviceStanding } from "@/lib/domain/equipment/service-standing";
import { decideTransition, transitions } from "@/lib/domain/equipment/transitions";
import { equipmentStates } from "@/lib/domain/equipment/types";

const blocks = readServicePolicy("{}");
const warns = readServicePolicy(
  '{"overdueCheck":"warn","overdueMaintenance":"warn","chartBreach":"warn","uncheckedAnneal":"warn"}',
);
const fine: ServiceStanding = {
  since: "2026-01-01",
  check: { everyDays: null, lastOn: null },
  maintenance: { everyDays: null, lastOn: null },
  chartBreach: null,
  uncheckedAnneal: null,
};
const problem = (standing: Partial<ServiceStanding>, day: string, policy = blocks) =>
  serviceProblem({ tag: "REF-1", state: "in-service", standing: { ...fine, ...standing } }, policy, day)
    ?.ground ?? null;

let id = 0;
const entry = (
  figures: EntryFigures,
  happenedOn: string,
  outcome: LogEntry["outcome"] = "none",
): LogEntry => {
  id += 1;
  return { id, kind: figures.kind, happenedOn, outcome, summary: "x", figures };
};
const verified = (on: string) => entry({ kind: "verification", against: "order" }, on, "passed");
const damage = (on: string, soundOn?: string) =>
  entry({ kind: "damage", ...(soundOn ? { soundOn } : {}) }, on);
const anneal = (on: string) => entry({ kind: "anneal", method: "furnace", celsius: 1100, hours: 1 }, on);
const check = (found: number, on: string, outcome: LogEntry["outcome"] = "passed") =>
  entry(
    { kind: "intermediate-check", quantity: "ice", expected: 0, found, limit: 1, unit: "°C" },
    on,
    outcome,
  );

describe("serviceProblem", () => {
  it("lets recurring work stand on its last day, and not on the next", () => {
    const work = { everyDays: 30, lastOn: "2026-03-01" };
    expect(problem({ check: work }, "2026-03-31")).toBeNull();
    expect(problem({ check: work }, "2026-04-01")).toBe("check-overdue");
    expect(problem({ maintenance: work }, "2026-04-01")).toBe("maintenance-overdue");
    // Never done: counted from when it came into use; not known since when: at once.
    const never = { everyDays: 30, lastOn: null };
    expect(problem({ check: never }, "2026-01-31")).toBeNull();
    expect(problem({ check: never }, "2026-02-01")).toBe("check-overdue");
    expect(problem({ check: never, since: null }, "2026-01-01")).toBe("check-overdue");
  });

  it("names a chart out of control and an anneal without a check", () => {
    expect(problem({ chartBreach: "ice: beyond 3 s" }, "2026-01-01")).toBe("chart-breached");
    expect(problem({ uncheckedAnneal: "2026-01-01" }, "2026-01-02")).toBe("anneal-unchecked");
  });

  it("warns where the policy says so, but never about what is out of service", () => {
    const all = {
      check: { everyDays: 1, lastOn: "2026-01-01" },
      maintenance: { everyDays: 1, lastOn: "2026-01-01" },
      chartBreach: "x",
      uncheckedAnneal: "2026-01-01",
    };
    expect(problem(all, "2026-06-01", warns)).toBeNull();
    const facts = { tag: "REF-1", state: "in-service" as const, standing: { ...fine, ...all } };
    expect(serviceFindings(facts, warns, "2026-06-01").map(({ ground }) => ground)).toEqual([
      "check-overdue",
      "maintenance-overdue",
      "chart-breached",
      "anneal-unchecked",
    ]);
    // What blocks is said first.
    const mixed = { ...warns, uncheckedAnneal: "block" as const };
    expect(serviceFindings(facts, mixed, "2026-06-01")[0]).toMatchObject({ ground: "anneal-unchecked" });
    for (const state of equipmentStates.filter((one) => one !== "in-service"))
      expect(serviceProblem({ tag: "R", state, standing: fine }, warns, "2026-01-01")?.ground).toBe(
        state === "suspect" ? "suspect" : "not-in-service",
      );
  });
});

describe("transitions", () => {
  it("lead into service through verified only, and out of retirement never", () => {
    const into = equipmentStates.filter((from) => transitions[from].includes("in-service"));
    expect(into).toEqual(["verified"]);
    expect(transitions.retired).toEqual([]);
    for (const from of equipmentStates.filter((one) => one !== "retired"))
      expect(transitions[from]).toContain("retired");
    expect(decideTransition("verified", "in-service", false)).toMatchObject({
      refusal: { code: "wrong-state", fields: { state: expect.stringContaining("verification") } },
    });
    expect(decideTransition("verified", "in-service", true)).toMatchObject({ ok: true });
    expect(decideTransition("verified", "verified", true)).toMatchObject({ ok: false });
  });
});

describe("a logbook", () => {
  it("holds a verification until anything speaks against it", () => {
    expect(isVerified([])).toBe(false);
    expect(isVerified([verified("2026-01-01")])).toBe(true);
    expect(isVerified([verified("2026-01-01"), check(0, "2026-01-02")])).toBe(true);
    expect(isVerified([verified("2026-01-01"), check(2, "2026-01-02", "failed")])).toBe(false);
    expect(isVerified([verified("2026-01-01"), damage("2026-01-02")])).toBe(false);
    expect(isVerified([damage("2026-01-02"), verified("2026-01-03")])).toBe(true);
  });

  it("counts a failed check as no check, a calibration as one, and a check after an anneal", () => {
    const record = { receivedOn: "2026-01-01", checkIntervalDays: 30, maintenanceIntervalDays: null };
    const standing = serviceStanding(
      record,
      [check(0, "2026-02-01"), check(3, "2026-03-01", "failed")],
      null,
    );
    expect(standing.check.lastOn).toBe("2026-02-01");
    expect(serviceStanding(record, [check(0, "2026-02-01")], "2026-02-10").check.lastOn).toBe("2026-02-10");
    expect(serviceStanding(record, [anneal("2026-02-01")], null).uncheckedAnneal).toBe("2026-02-01");
    const after = [anneal("2026-02-01"), check(3, "2026-02-02", "failed")];
    expect(serviceStanding(record, after, null).uncheckedAnneal).toBe("2026-02-01");
    expect(serviceStanding(record, [...after, check(0, "2026-02-03")], null).uncheckedAnneal).toBeNull();
  });

  it("tells the last day that spoke for equipment in doubt", () => {
    const book = [verified("2026-01-01"), check(0, "2026-02-01")];
    expect(lastGoodEvidence(book, [])).toBe("2026-02-01");
    expect(lastGoodEvidence([...book, damage("2026-03-01")], [])).toBe("2026-02-01");
    expect(lastGoodEvidence([...book, damage("2026-03-01", "2026-02-20")], [])).toBe("2026-02-20");
    expect(lastGoodEvidence([...book, damage("2026-03-01")], ["2026-02-10", "2026-04-01"])).toBe(
      "2026-02-10",
    );
    expect(lastGoodEvidence([damage("2026-03-01")], [])).toBeNull();
  });

  it("judges a check by its figures, its limit included, and takes what follows from it", () => {
    const asked = {
      equipment: { tag: "R", kind: "reference" as const, state: "in-service" as const, receivedOn: null },
      said: undefined,
      happenedOn: "2026-03-01",
      today: "2026-03-01",
      entries: [],
    };
    const judged = (found: number) =>
      decideEntry({
        ...asked,
        figures: { kind: "intermediate-check", quantity: "q", expected: 10, found, limit: 0.5, unit: "µV" },
      });
    expect(judged(10.5)).toMatchObject({ value: { outcome: "passed", state: null } });
    expect(judged(9.4)).toMatchObject({ value: { outcome: "failed", state: "suspect" } });
    expect(decideEntry({ ...asked, figures: { kind: "damage", soundOn: "2026-03-02" } })).toMatchObject({
      refusal: { fields: { "figures.soundOn": expect.any(String) } },
    });
    expect(stateAfter("received", { kind: "damage", outcome: "none" })).toBeNull();
    expect(stateAfter("verified", { kind: "verification", outcome: "failed" })).toBe("suspect");
    expect(stateAfter("suspect", { kind: "repair", outcome: "none" })).toBe("under-repair");
    expect(stateAfter("under-repair", { kind: "verification", outcome: "passed" })).toBe("verified");
    expect(stateAfter("in-service", { kind: "verification", outcome: "passed" })).toBeNull();
  });
});

describe("checkCharts", () => {
  const day = (index: number) => `2026-01-${String(index + 1).padStart(2, "0")}`;
  const quiet = Array.from({ length: 20 }, (_, index) => check(index % 2 === 0 ? 0.1 : -0.1, day(index)));

  it("draws limits from twenty checks before the last, by the moving range", () => {
    const [few] = checkCharts(quiet);
    expect(few).toMatchObject({
      limits: null,
      breach: null,
      noLimits: expect.stringContaining("there are 19"),
    });
    const [chart] = checkCharts([...quiet, check(0, day(20))]);
    // Mean 0, mean moving range 0.2: s = 0.2/1.128, the jump's limit 3.267 · 0.2.
    expect(chart?.limits?.centre).toBeCloseTo(0, 12);
    expect(chart?.limits?.standardDeviation).toBeCloseTo(0.2 / 1.128, 9);
    expect(chart?.limits?.movingRangeLimit).toBeCloseTo(0.6534, 9);
    expect(chart?.breach).toBeNull();
  });

  it("says what the last check breaks, and forgets it with the next that breaks nothing", () => {
    const out = check(0.7, day(20));
    const [chart] = checkCharts([...quiet, out]);
    expect(chart?.breach).toBe("ice, 2026-01-21: beyond 3 s, a jump from the check before");
    expect(chart?.points.at(-1)).toMatchObject({ rules: ["beyond-3-sigma"], isJump: true });
    expect(checkCharts([...quiet, out, check(0.1, day(21))])[0]?.breach).toBeNull();
  });

  it("keeps quantities apart, and begins anew after a repair", () => {
    const other = entry(
      { kind: "intermediate-check", quantity: "other", expected: 0, found: 0, limit: 1, unit: "°C" },
      day(3),
      "passed",
    );
    expect(checkCharts([...quiet, other]).map(({ points }) => points.length)).toEqual([20, 1]);
    const repaired = [...quiet, entry({ kind: "repair", by: "maker" }, day(21)), check(5, day(22))];
    expect(checkCharts(repaired)[0]?.points.map(({ value }) => value)).toEqual([5]);
  });

  it("draws none where all are alike, and says so", () => {
    const alike = Array.from({ length: 21 }, (_, index) => check(0.1, day(index)));
    expect(checkCharts(alike)[0]).toMatchObject({
      limits: null,
      noLimits: expect.stringContaining("same value"),
    });
  });
});
