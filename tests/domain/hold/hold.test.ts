import { describe, expect, it } from "vitest";
import { decideNotHeld, type StandingHold } from "@/lib/domain/hold/decide-not-held";
import { decidePlace } from "@/lib/domain/hold/decide-place";
import { decideRelease, type HoldToEnd, proposeDisclaimer } from "@/lib/domain/hold/decide-release";
import { isDisposalAsked, proposeOutcome } from "@/lib/domain/hold/propose-outcome";
import type { Result } from "@/lib/domain/refusal";

const standing: StandingHold = {
  holdId: "h",
  tag: "T-1",
  orderNumber: "O-1",
  reason: "bent",
  isOfOrder: false,
  isToBeReturned: false,
  nonconformity: null,
};
const refusalOf = (result: Result<unknown>) => (result.ok ? null : result.refusal);

describe("what is on hold", () => {
  it("is named once a sensor, with its place and the remedy", () => {
    expect(decideNotHeld([], "loaded").ok).toBe(true);
    const refusal = refusalOf(
      decideNotHeld([standing, { ...standing, holdId: "i" }], "loaded", (tag) => `at.${tag}`),
    );
    expect(refusal?.message).toBe(
      "T-1 is on hold: bent. It cannot be loaded, and nothing was stored. Release the hold on the sensor's page, or leave the sensor out; the others can go on.",
    );
    expect(Object.keys(refusal?.fields ?? {})).toEqual(["at.T-1"]);
  });

  it("says that it stands on the order, or that the sensor goes back", () => {
    const order = refusalOf(decideNotHeld([{ ...standing, isOfOrder: true }], "signed off"));
    expect(order?.message).toContain("T-1 is on hold with its order O-1: bent");
    const story = refusalOf(decideNotHeld([{ ...standing, nonconformity: "N-1" }], "signed off"));
    expect(story?.message).toContain(
      "The work resumes on the page of N-1, once that is authorised there, or",
    );
    expect(story?.message).not.toContain("Release");
    const back = refusalOf(decideNotHeld([{ ...standing, isToBeReturned: true }], "signed off"));
    expect(back?.message).toContain("goes back to the customer unmeasured (bent)");
    expect(back?.message).toContain("Leave it out and hand it back.");
  });
});

describe("placing a hold", () => {
  const sensors = [
    { id: "1", tag: "T-1", state: "received" as const },
    { id: "2", tag: "T-2", state: "issued" as const },
  ];
  const place = (tag: string, more = {}) =>
    decidePlace("accepted", sensors, { tag, kind: "condition", asks: false, ...more });

  it("takes a sensor at work or the whole order", () => {
    expect(place("T-1")).toEqual({ ok: true, value: sensors[0] });
    expect(place("")).toEqual({ ok: true, value: null });
  });

  it.each([
    [place("T-2"), "wrong-state"],
    [place("T-3"), "not-found"],
    [place("T-1", { kind: "question" }), "invalid"],
    [decidePlace("completed", sensors, { tag: "", kind: "condition", asks: false }), "wrong-state"],
  ])("refuses what cannot wait", (result, code) => {
    expect(refusalOf(result)?.code).toBe(code);
  });
});

describe("ending a hold", () => {
  const open: HoldToEnd = {
    kind: "condition",
    isReleased: false,
    hasOpenQuestion: false,
    isInsisted: false,
    isIssued: false,
    isOfSensor: true,
    isOrderInWork: true,
    inReview: [],
    nonconformity: null,
  };
  const waits = { outcome: "return-unmeasured", disclaimer: "", awaitsAnother: true } as const;
  const words = { outcome: "go-on-with-disclaimer", disclaimer: "words" } as const;

  it.each([
    [{}, { outcome: "go-on", disclaimer: "" }],
    [{}, words],
    [{ isInsisted: true }, words],
    [{ nonconformity: "N-1" }, { outcome: "return-unmeasured", disclaimer: "" }],
    [{}, waits],
  ] as const)("%j ends with %j", (hold, release) => {
    expect(decideRelease({ ...open, ...hold }, { awaitsAnother: false, ...release }).ok).toBe(true);
  });

  it.each([
    [{ isReleased: true }, words, "wrong-state", null],
    [{ hasOpenQuestion: true }, words, "rule", null],
    [{ nonconformity: "N-1" }, words, "rule", null],
    [{ isInsisted: true }, { outcome: "go-on", disclaimer: "" }, "rule", "outcome"],
    [{}, { ...words, disclaimer: "" }, "invalid", "disclaimer"],
    [{}, { outcome: "go-on", disclaimer: "words" }, "invalid", "disclaimer"],
    [{ isIssued: true }, words, "rule", "outcome"],
    [{}, { ...waits, outcome: "go-on" }, "rule", "awaitsAnother"],
    [{ isOfSensor: false }, waits, "rule", "awaitsAnother"],
    [{ isIssued: true }, waits, "rule", "awaitsAnother"],
    [{ inReview: ["T-1"] }, { ...waits, awaitsAnother: false }, "rule", "outcome"],
    [{ inReview: ["T-1"], nonconformity: "N-1" }, { ...waits, awaitsAnother: false }, "rule", "outcome"],
    [{ isOrderInWork: false }, waits, "rule", "awaitsAnother"],
  ] as const)("%j does not end with %j", (hold, release, code, field) => {
    const refusal = refusalOf(decideRelease({ ...open, ...hold }, { awaitsAnother: false, ...release }));
    expect(refusal?.code).toBe(code);
    expect(Object.keys(refusal?.fields ?? {})).toEqual(field === null ? [] : [field]);
  });

  it.each([
    [undefined, "go-on", false],
    [{ choice: "Measure it as it is", text: "" }, "go-on", false],
    [{ choice: "Return it unmeasured", text: "" }, "return-unmeasured", false],
    [{ choice: "Send it back", text: "" }, "return-unmeasured", false],
    [{ choice: "", text: "Please return it." }, "return-unmeasured", false],
    [{ choice: "Dispose of it for us", text: "" }, "return-unmeasured", true],
    [{ choice: "", text: "scrap it" }, "return-unmeasured", true],
    [{ choice: "Use the other channel", text: "" }, null, false],
  ] as const)("after %j the form begins with %s", (answer, outcome, isDisposal) => {
    expect(proposeOutcome(["go-on", "return-unmeasured"], answer)).toBe(outcome);
    expect(proposeOutcome(["return-unmeasured"], answer)).toBe("return-unmeasured");
    expect(isDisposalAsked(answer)).toBe(isDisposal);
  });

  it("proposes a disclaimer that names the deviation and the day", () => {
    expect(proposeDisclaimer("tip bent", "2026-03-04")).toMatch(/tip bent.*2026-03-04/);
  });
});
