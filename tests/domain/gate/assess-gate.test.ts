import { describe, expect, it } from "vitest";
import type { GivenReason } from "@/lib/domain/gate/assessment";
import { gateChecks } from "@/lib/domain/gate/checks";
import { gateHeadings } from "@/lib/domain/gate/headings";
import type { GatePlan } from "@/lib/domain/gate/plan";
import { assessed, complaints, plan, rowsOf, sensor, withBench, withBuild } from "./plan-of";

const several = (build: Partial<(typeof sensor)["build"]>): Partial<GatePlan> => ({
  sensors: ["T-1", "T-2", "T-3"].map((tag) => ({ ...sensor, tag, build: { ...sensor.build, ...build } })),
});
const given = (code: string, subject: string, reason = "agreed with the customer"): GivenReason => ({
  code,
  subject,
  reason,
  reachesCertificate: true,
  saidAt: new Date("2026-10-15T07:00:00Z"),
});

describe("the gate as a whole", () => {
  it("has at most eight headings, each with a rule, and every rule under one of them", () => {
    expect(gateHeadings.length).toBeLessThanOrEqual(8);
    expect(new Set(gateChecks.map(({ heading }) => heading))).toEqual(new Set(gateHeadings));
    expect(assessed().headings.map(({ heading }) => heading)).toEqual([...gateHeadings]);
  });

  it("says of every rule, met or not, what it rests on", () => {
    const spoilt = { ...several({ leadInsulation: "ptfe", isUsed: true }), tips: [], places: [] };
    const said = [
      ...rowsOf(assessed()),
      ...rowsOf(assessed(spoilt)),
      ...rowsOf(assessed(withBench({ channels: [] }))),
    ];
    expect(said.filter(({ source, reason }) => source.trim().length < 8 || reason === "")).toEqual([]);
    expect(rowsOf(assessed()).every(({ severity }) => severity === "ok")).toBe(true);
  });

  it("says one thing of many sensors once", () => {
    const rows = rowsOf(assessed(several({ isUsed: true }))).filter(({ code }) => code === "used-base-metal");
    expect(rows).toHaveLength(1);
    expect(rows[0]?.subjects).toEqual(["T-1", "T-2", "T-3"]);
  });

  it("keeps apart what differs: those with a reason and those without", () => {
    const used = several({ isUsed: true });
    expect(complaints(used, [given("used-base-metal", "T-2")])).toEqual([
      "used-base-metal overridable T-1,T-3",
      "used-base-metal overridable T-2",
    ]);
  });

  it("may start, needs reasons, or is refused; and a refusal outweighs a reason", () => {
    const used = withBuild({ isUsed: true });
    expect(assessed().verdict).toBe("may-start");
    expect(assessed(withBuild({})).verdict).toBe("may-start");
    expect(assessed(used).verdict).toBe("needs-reasons");
    expect(assessed(used, [given("used-base-metal", "T-1")]).verdict).toBe("may-start");
    expect(assessed({ ...used, voltmeter: null }, [given("used-base-metal", "T-1")]).verdict).toBe("refused");
  });

  it("starts with warnings, which stop nobody", () => {
    const { isUsed: _left, ...build } = sensor.build;
    const unknown = assessed({ sensors: [{ ...sensor, build }] });
    expect(unknown.verdict).toBe("may-start");
    expect(unknown.headings.find(({ heading }) => heading === "metal")?.severity).toBe("warning");
  });

  it("counts no reason against what no reason sets aside", () => {
    const lead = withBuild({ leadInsulation: "ptfe", lengthMillimetre: 420 });
    const with_ = assessed(lead, [given("lead-near-heat", "T-1")]);
    expect(with_.verdict).toBe("refused");
    const row = rowsOf(with_).find(({ code }) => code === "lead-near-heat");
    expect(row).toMatchObject({ severity: "refuse", given: null, override: null });
    expect(row?.reason).toMatch(/toxic/);
  });

  it("marks what was accepted as last time on this configuration, and offers its reason", () => {
    const lastTime = {
      run: "R-0",
      accepted: [{ code: "used-base-metal", reason: "agreed by N. North" }],
    };
    const row = (more: Partial<GatePlan>) =>
      rowsOf(assessed({ ...withBuild({ isUsed: true }), ...more })).find(
        ({ code }) => code === "used-base-metal",
      );
    expect(row({ lastTime })?.asLastTime).toEqual({ run: "R-0", reason: "agreed by N. North" });
    expect(row({})?.asLastTime).toBeNull();
    expect(row({ lastTime: { run: "R-0", accepted: [] } })?.asLastTime).toBeNull();
  });

  it("says of the run itself what concerns no single sensor", () => {
    const row = rowsOf(assessed(withBench({ warmUpHours: null }))).find(({ code }) => code === "warm-up");
    expect(row?.subjects).toEqual([]);
    expect(plan.sensors).toHaveLength(1);
  });
});
