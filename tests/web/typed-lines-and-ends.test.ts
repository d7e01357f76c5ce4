import { expect, it } from "vitest";
import { noDraft, oneEndOf } from "@/app/(lab)/orders/[number]/receive/check-draft";
import { emptyLine, lineAfter } from "@/app/(lab)/orders/line-draft";

it("a line added is like the one before, but for what it is about and who does it", () => {
  const last = { ...emptyLine, setpoints: "300 500", construction: "3 mm", providerId: "p", lineId: "l" };
  expect(lineAfter(last)).toEqual({ ...emptyLine, setpoints: "300 500" });
  expect(lineAfter(undefined)).toEqual(emptyLine);
});

it("a paste is of one end where every sensor is said to be that end, by its row or for all", () => {
  const row = (end: string) => ({ ...noDraft, end });
  expect(oneEndOf(["A", "B"], { A: row("first"), B: row("first") }, "")).toBe("first");
  expect(oneEndOf(["A", "B"], { A: row("first") }, "first")).toBe("first");
  expect(oneEndOf(["A", "B"], { A: row("second") }, "first")).toBe("");
  expect(oneEndOf(["A", "B"], { A: row("first") }, "")).toBe("");
  expect(oneEndOf([], {}, "first")).toBe("");
});
