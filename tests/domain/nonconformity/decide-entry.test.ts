import { describe, expect, it } from "vitest";
import { decideEntry, isInvolved, type Story } from "@/lib/domain/nonconformity/decide-entry";
import type { EntryKind } from "@/lib/domain/nonconformity/labels";

const said = (...kinds: EntryKind[]) => kinds.map((kind) => ({ kind, saidById: "corrector" }));
const story = (more: Partial<Story> = {}): Story => ({
  number: "N-1",
  kind: "nonconforming-work",
  state: "open",
  openedById: "opener",
  entries: [],
  openHolds: 0,
  involvedIds: ["performer"],
  ...more,
});
const done = said("effect", "correction", "cause", "corrective-action");
const outcome = (of: Story, kind: EntryKind, person = "other") => {
  const result = decideEntry(of, kind, person);
  return result.ok ? result.value : result.refusal.code;
};

describe("the next step", () => {
  it.each([
    [story(), "note", "open"],
    [story(), "effect", "examined"],
    [story({ state: "corrected" }), "effect", "corrected"],
    [story(), "correction", "rule"],
    [story({ state: "examined" }), "correction", "corrected"],
    [story({ state: "examined" }), "resumed", "rule"],
    [story({ state: "corrected" }), "resumed", "corrected"],
    [story(), "reopened", "wrong-state"],
    [story({ state: "closed" }), "reopened", "open"],
    [story({ state: "closed" }), "note", "closed"],
    [story({ state: "closed" }), "hold", "wrong-state"],
    [story({ state: "examined", entries: done }), "closed", "wrong-state"],
    [story({ state: "corrected", entries: done }), "closed", "closed"],
    [story({ state: "corrected", entries: done, openHolds: 1 }), "closed", "rule"],
    [story({ state: "corrected", entries: done.slice(0, 3) }), "closed", "rule"],
    [story({ state: "corrected", entries: [...done, ...said("closed", "reopened")] }), "closed", "rule"],
    [story({ state: "corrected", kind: "complaint", entries: done }), "closed", "rule"],
    [
      story({ state: "corrected", kind: "complaint", entries: [...done, ...said("customer-told")] }),
      "closed",
      "closed",
    ],
  ] as const)("%#", (of, kind, expected) => {
    expect(outcome(of, kind)).toBe(expected);
  });

  it("is closed by nobody who reported or corrected, nor who did what is complained of", () => {
    const corrected = story({ state: "corrected", entries: done });
    for (const person of ["opener", "corrector"]) expect(outcome(corrected, "closed", person)).toBe("rule");
    expect(outcome(corrected, "closed", "performer")).toBe("closed");
    expect(isInvolved({ ...corrected, kind: "complaint" }, "performer")).toBe(true);
    expect(isInvolved({ ...corrected, kind: "complaint" }, "other")).toBe(false);
  });
});
