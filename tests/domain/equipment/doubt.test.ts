import { expect, it } from "vitest";
import { doubtOf } from "@/lib/domain/equipment/doubt";

const on = (day: number) => new Date(Date.UTC(2026, 2, day));
const verified = (day: number) => ({
  ...{ kind: "verification" as const, outcome: "passed" as const },
  recordedAt: on(day),
});
const fell = (day: number) => ({ kind: "damage" as const, outcome: "none" as const, recordedAt: on(day) });
const report = (number: string, openedOn: number, examinedOn: number | null, isClosed = false) => ({
  ...{ number, isClosed, openedAt: on(openedOn) },
  isUnexamined: examinedOn === null,
  examinedAt: examinedOn === null ? null : on(examinedOn),
});
const of = (change: Partial<Parameters<typeof doubtOf>[0]>) =>
  doubtOf({ state: "in-service", entries: [verified(1)], reports: [], runBeganAt: on(5), ...change });

it("is none of what was verified and served ever since, nor of what was retired in peace", () => {
  expect(of({})).toBeNull();
  expect(of({ state: "retired" })).toBeNull();
  expect(of({ reports: [report("NC-1", 2, 3, true)] })).toBeNull();
});

it("lasts until its effect was examined, whatever became of the equipment since", () => {
  const entries = [verified(1), fell(8)];
  const open = { isExamined: false, report: "NC-2" };
  const reports = [report("NC-2", 8, null)];
  expect(of({ state: "suspect", entries, reports })).toEqual(open);
  expect(of({ state: "retired", entries, reports })).toEqual(open);
  expect(of({ entries: [...entries, verified(10)], reports })).toEqual(open);
  // What began after the verification is not touched by what was before it.
  expect(of({ entries: [...entries, verified(10)], reports, runBeganAt: on(11) })).toBeNull();
  const examined = [report("NC-2", 8, 9)];
  expect(of({ state: "suspect", entries, reports: examined })).toEqual({ isExamined: true, report: "NC-2" });
  expect(of({ entries: [...entries, verified(10)], reports: examined })).toBeNull();
});

it("is not settled by what was examined before", () => {
  const entries = [verified(1), fell(3), verified(4), fell(8)];
  const given = { state: "under-repair" as const, entries };
  expect(of({ ...given, reports: [report("NC-1", 3, 4)] })).toEqual({ isExamined: false, report: "NC-1" });
  expect(of({ ...given, reports: [report("NC-1", 3, 4, true)] })).toEqual({
    isExamined: false,
    report: null,
  });
  expect(of({ state: "retired", entries })).toEqual({ isExamined: false, report: null });
});

it("comes of a report alone, as on what a withdrawn certificate calibrated", () => {
  expect(of({ reports: [report("NC-3", 9, null)] })).toEqual({ isExamined: false, report: "NC-3" });
});
