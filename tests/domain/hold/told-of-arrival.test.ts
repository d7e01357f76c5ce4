import { describe, expect, it } from "vitest";
import { isToldOfArrival } from "@/lib/domain/hold/told-of-arrival";

const answered = [{ answer: null }, { answer: { choice: "Measure it as it is" } }];
const ended = { tag: "T-1", kind: "condition" as const, questions: answered, release: { outcome: "go-on" } };
const told = (...holds: Parameters<typeof isToldOfArrival>[1]) => isToldOfArrival("T-1", holds);

describe("what was found on arrival", () => {
  it("was told to the customer once they answered and its hold ended", () => {
    expect(told(ended)).toBe(true);
    expect(told(ended, { ...ended, questions: [] })).toBe(true);
  });

  it.each([
    ["no hold", []],
    ["nobody asked", [{ ...ended, questions: [] }]],
    ["no answer", [{ ...ended, questions: [{ answer: null }] }]],
    ["a hold that stands", [{ ...ended, release: null }]],
    ["another hold that stands", [ended, { ...ended, release: null }]],
    ["a hold of another sensor", [{ ...ended, tag: "T-2" }]],
    ["a hold of the whole order", [{ ...ended, tag: "" }]],
    ["a hold for nonconforming work", [{ ...ended, kind: "nonconforming-work" as const }]],
  ])("was not told to them with %s", (_, holds) => {
    expect(told(...holds)).toBe(false);
  });
});
