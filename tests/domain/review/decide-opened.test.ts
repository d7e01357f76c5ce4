import { createHash } from "node:crypto";
import { expect, it } from "vitest";
import { decideOpened, openedState } from "@/lib/domain/review/decide-opened";
import { resultsToOpen } from "@/lib/domain/review/results-to-open";
import type { ReviewException } from "@/lib/domain/review/review-exception";
import { withoutNotes } from "@/lib/domain/review/without-notes";

const sha256 = (bytes: Uint8Array) => Uint8Array.from(createHash("sha256").update(bytes).digest());
const results = ["T-1", "T-2", "T-3", "T-4"].flatMap((sensor) =>
  ["300 °C", "500 °C", "700 °C"].map((setpoint) => ({ sensor, setpoint, label: setpoint })),
);
const seed = new Uint8Array(32).fill(7);
const fail: ReviewException = {
  weight: 90,
  kind: "conformity",
  subject: "T-2 at 500 °C",
  text: "outside the tolerance",
  point: { sensor: "T-2", setpoint: "500 °C" },
  others: [{ sensor: "T-3", setpoint: "500 °C" }],
};
const given = { results, exceptions: [fail], seed, sha256 };

it("names what exceptions name and a tenth of the rest, rounded up, the same for the same seed", () => {
  const { named, drawn } = resultsToOpen(given);
  expect(named.map(({ sensor }) => sensor)).toEqual(["T-2", "T-3"]);
  expect(drawn).toHaveLength(1);
  expect(resultsToOpen(given)).toEqual({ named, drawn });
  const alone = resultsToOpen({ ...given, exceptions: [] });
  expect(alone.drawn).toHaveLength(2);
  expect(resultsToOpen({ ...given, results: [], exceptions: [] })).toEqual({ named: [], drawn: [] });
});

it("draws each result about as often as another over many seeds", () => {
  const counts = new Map<string, number>();
  for (let seeds = 0; seeds < 240; seeds += 1) {
    const lot = resultsToOpen({
      ...given,
      exceptions: [],
      seed: sha256(new TextEncoder().encode(String(seeds))),
    });
    for (const { sensor, setpoint } of lot.drawn)
      counts.set(`${sensor} ${setpoint}`, (counts.get(`${sensor} ${setpoint}`) ?? 0) + 1);
  }
  // 240 draws of 2 in 12: 40 each, with a standard deviation below 6.
  expect(counts.size).toBe(12);
  for (const count of counts.values()) expect(Math.abs(count - 40)).toBeLessThan(24);
});

it("does not have a result opened for a note", () => {
  const note = { ...fail, isNote: true as const };
  expect(resultsToOpen({ ...given, exceptions: [note] }).named).toEqual([]);
  expect(withoutNotes([fail, note])).toEqual([fail]);
});

it("refuses with the first unopened results of the sensors to be signed, and only of those", () => {
  const { mustOpen } = openedState({ ...given, opened: [] });
  const sensors = ["T-2"];
  const refused = decideOpened({ ...given, opened: [], sensors });
  expect(refused).toMatchObject({ ok: false, refusal: { code: "rule" } });
  if (!refused.ok) expect(refused.refusal.message).toMatch(/^You have not opened T-2 at /);
  const drawnSensors = new Set(mustOpen.map(({ sensor }) => sensor));
  const untouched = ["T-1", "T-2", "T-3", "T-4"].find((tag) => !drawnSensors.has(tag));
  expect(decideOpened({ ...given, opened: [], sensors: [untouched!] })).toEqual({ ok: true, value: null });
  expect(decideOpened({ ...given, opened: mustOpen, sensors: ["T-1", "T-2", "T-3", "T-4"] })).toEqual({
    ok: true,
    value: null,
  });
  for (const left of mustOpen) {
    const opened = mustOpen.filter((one) => one !== left);
    const answer = decideOpened({ ...given, opened, sensors: [left.sensor] });
    expect(answer).toMatchObject({ ok: false });
    if (!answer.ok) expect(answer.refusal.message).toContain(`${left.sensor} at ${left.label}`);
  }
});
