import { describe, expect, it } from "vitest";
import { externalPart, nextOfExternal } from "@/lib/domain/parts/external-parts";
import { decideRecordReport, decideReportDecision } from "@/lib/domain/provider/decide-report";
import { reportLines } from "@/lib/domain/provider/measured-by";
import { RecordReportInput } from "@/lib/domain/provider/report-schema";
import type { Refusal, Result } from "@/lib/domain/refusal";

const refusalIn = (result: Result<unknown>): Refusal => {
  if (result.ok) throw new Error("it was not refused");
  return result.refusal;
};

const facts = {
  sensor: "T-1",
  state: "received",
  provider: "Invented Metrology",
  isApproved: true,
  wasSent: true,
  earlier: [],
  orderedCelsius: [600, 537.7777777777778],
  isPdf: true,
  today: "2026-03-03",
  takenInOn: "2026-03-01",
} as const;
const row = {
  orderedCelsius: "600",
  nominalCelsius: "600,2",
  value: "24905.10",
  expanded: "5.0",
  coverageFactor: "2",
};
const input = RecordReportInput.parse({
  ...{ sensor: "T-1", certificate: "X-1", issuedOn: "2026-03-02", unit: "microvolt", results: [row] },
  document: { fileName: "x.pdf", bytes: new Uint8Array(1) },
});

describe("a provider's certificate", () => {
  it("is kept with its own digits", () => {
    const decided = decideRecordReport(facts, input);
    expect(decided.ok && reportLines(decided.value)).toEqual([
      "600.2 °C: emf 24905.10 µV, U = 5.0 µV (k = 2)",
    ]);
    // 1000 °F is the same setpoint however it was rounded.
    const fahrenheit = { ...input, results: [{ ...input.results[0]!, orderedCelsius: 537.78 }] };
    expect(decideRecordReport(facts, fahrenheit).ok).toBe(true);
  });

  it.each([
    [{ provider: null }, /done here/],
    [{ wasSent: false }, /never went to Invented Metrology/],
    [{ earlier: [null] }, /waits for its second person/],
    [{ state: "loaded" }, /in a run here/],
  ])("is refused where %j", (more, message) => {
    expect(refusalIn(decideRecordReport({ ...facts, ...more }, input)).message).toMatch(message);
  });

  it.each([
    [{ isApproved: false }, {}, "issuedOn"],
    [{}, { issuedOn: "2026-03-04" }, "issuedOn"],
    [{}, { issuedOn: "2026-02-28" }, "issuedOn"],
    [{}, { unit: "celsius" as const }, "results.0.value"],
    [{ isPdf: false }, {}, "document"],
    [{ earlier: ["accepted"] as const }, {}, "correction"],
    [{}, { correction: "none to correct" }, "correction"],
    [{}, { results: [] }, "results.0.value"],
    [{}, { results: [input.results[0]!, input.results[0]!] }, "results.1.value"],
    [{ orderedCelsius: [700] }, {}, "results.0.value"],
  ])("is refused where %j and %j, at %s", (more, typed, field) => {
    const refusal = refusalIn(decideRecordReport({ ...facts, ...more }, { ...input, ...typed }));
    expect(Object.keys(refusal.fields ?? {})).toEqual([field]);
  });

  it("is refused with both days, and with a deviation nobody believes", () => {
    const at = (more: object) => refusalIn(decideRecordReport(facts, { ...input, ...more })).fields ?? {};
    expect(at({ issuedOn: "2026-03-04" }).issuedOn).toMatch(/2026-03-04.*2026-03-03/);
    expect(at({ issuedOn: "2026-02-28" }).issuedOn).toMatch(/2026-02-28.*2026-03-01/);
    const deviation = (value: string) => ({
      unit: "celsius" as const,
      results: [{ ...input.results[0]!, value }],
    });
    // 10 % of 600.2 °C.
    expect(decideRecordReport(facts, { ...input, ...deviation("-60.02") }).ok).toBe(true);
    expect(at(deviation("-60.1"))["results.0.value"]).toMatch(/check the figure, and the unit/);
  });

  it("is decided once, by another person, while the line is still theirs", () => {
    const given = {
      ...{ sensor: "T-1", personId: "b", recordedById: "a", standing: null, reason: "", isStillTheirs: true },
      decision: "accepted" as const,
    };
    expect(decideReportDecision(given)).toEqual({ ok: true, value: "accepted" });
    for (const [more, message] of [
      [{ personId: "a" }, /You recorded/],
      [{ standing: "accepted" as const }, /accepted already/],
      [{ isStillTheirs: false }, /does not go to this provider any more/],
      [{ decision: "rejected" as const }, /Nothing was decided/],
    ] as const)
      expect(refusalIn(decideReportDecision({ ...given, ...more })).message).toMatch(message);
  });

  it("is told setpoint by setpoint, and whose turn it is", () => {
    const waiting = { provider: "P", isWaitingForSecond: true, isAway: false, rejected: null, report: null };
    expect(externalPart(waiting, 600).state).toBe("waiting");
    expect(nextOfExternal(waiting, "received")).toMatch(/^A second person/);
    expect(nextOfExternal({ ...waiting, isWaitingForSecond: false }, "received")).toMatch(/^P measures it/);
    const done = { ...waiting, isWaitingForSecond: false, report: { certificate: "X-1", celsius: [600] } };
    expect([600, 700].map((celsius) => externalPart(done, celsius).state)).toEqual([
      "reported",
      "not-reached",
    ]);
    expect(nextOfExternal(done, "issued")).toBe("Measured by P, certificate X-1: send it back.");
    expect(nextOfExternal({ ...done, isAway: true }, "issued")).toMatch(/still there.*came back/);
    const rejected = { certificate: "X-1", reason: "U is 1.2 there." };
    const again = { ...waiting, isWaitingForSecond: false, rejected };
    expect(nextOfExternal(again, "received")).toBe(
      "The record of certificate X-1 was rejected (U is 1.2 there): record their certificate again on its page.",
    );
    expect(nextOfExternal({ ...again, rejected: null, isAway: true }, "received")).toMatch(/has it: record/);
  });
});
