import { expect, it } from "vitest";
import { hasHoursChanged, reckonedAt } from "@/lib/domain/order/hours-changed";

const line = {
  "how many": "3",
  setpoints: "300 500 °C",
  options: "",
  "where it is done": "",
  construction: "a",
};
const snapshot = (says: object, terms: object = {}) => ({
  terms: { urgency: "Standard", note: "", ...terms } as Record<string, string>,
  lines: [{ lineId: "1", says: { ...line, ...says } as Record<string, string> }],
});
const reckoned = new Date("2026-11-02T08:00:00Z");
const isHit = (after: ReturnType<typeof snapshot>, changedAt = "2026-11-03T08:00:00Z") =>
  hasHoursChanged(reckoned, [{ changedAt: new Date(changedAt), before: snapshot({}), after }]);

it("minds what takes furnace hours, and only after they were reckoned", () => {
  for (const says of [{ "how many": "2" }, { setpoints: "300 °C" }, { options: "annealed" }])
    expect(isHit(snapshot(says))).toBe(true);
  expect(isHit(snapshot({}, { urgency: "Express" }))).toBe(true);
  expect(isHit({ ...snapshot({}), lines: [] })).toBe(true);
  expect(isHit(snapshot({ construction: "b" }, { note: "soon" }))).toBe(false);
  expect(isHit(snapshot({ "how many": "2" }), "2026-11-01T08:00:00Z")).toBe(false);
  expect(hasHoursChanged(reckoned, [])).toBe(false);
});

it("takes the moment from the basis of the promise, and none for the beginning of time", () => {
  expect(reckonedAt(`{"reckonedAt":"${reckoned.toISOString()}","slots":[]}`)).toEqual(reckoned);
  expect(reckonedAt("{}").getTime()).toBe(0);
});
