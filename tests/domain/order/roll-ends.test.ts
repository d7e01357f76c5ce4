import { describe, expect, it } from "vitest";
import { decideRollEnds, type RollPiece, rollsToAsk } from "@/lib/domain/order/decide-roll-ends";
import { decideAgreeRoll } from "@/lib/domain/order/roll-agreement";
import { onlyOneEnd, rollName, rollsOnOneEnd } from "@/lib/domain/order/roll-ends";

const end = (roll: string, which?: "first" | "second") => ({ lot: "L1", roll, end: which });
const piece = (
  tag: string,
  roll: string,
  which: "first" | "second" | undefined,
  standing: RollPiece["standing"] = "here",
): RollPiece => ({ ...end(roll, which), sensorId: tag, tag, standing });
const rolls = (pieces: readonly RollPiece[], agreed: readonly string[] = []) => ({
  orderNumber: "O-1",
  ruleSet: "audited-heat-treatment" as const,
  pieces,
  agreements: agreed.map((roll) => ({ lot: "L1", roll, agreedWith: "Lee", text: "mail of 2 March" })),
});

describe("rolls on one end", () => {
  it("are named once each, a piece of an unknown end standing for none", () => {
    expect(rollsOnOneEnd([end("1", "first"), end("1", "second")])).toEqual([]);
    expect(
      rollsOnOneEnd([end("1", "first"), end("2", "second"), end("2", "second"), end("3")]).map(rollName),
    ).toEqual(["lot L1, roll 1", "lot L1, roll 2", "lot L1, roll 3"]);
    expect(rollsOnOneEnd([{}, { lot: "L1" }])).toEqual([]);
  });

  it("stop the sign-off, each with its sensors, and with the remedy", () => {
    const here = rolls([piece("T-1", "1", "first"), piece("T-2", "1", "second"), piece("T-3", "2", "first")]);
    expect(decideRollEnds(here, ["T-1", "T-2"], "per-lot").ok).toBe(true);
    expect(decideRollEnds(here, ["T-1", "T-2", "T-3"], "per-lot")).toMatchObject({
      refusal: {
        message: expect.stringMatching(
          /lot L1, roll 2 \(T-3\) one end alone.*one run with the other end.*on order O-1/,
        ),
      },
    });
    expect(decideRollEnds(here, ["T-3"], "per-sensor")).toMatchObject({
      refusal: { message: expect.stringContaining("Take the other end in") },
    });
    expect(decideRollEnds({ ...here, ruleSet: "none" }, ["T-3"], "per-lot").ok).toBe(true);
  });

  it("are not asked about where a provider measures the end, or a certificate says it", () => {
    const asked = (change: Partial<RollPiece>, agreed: readonly string[] = []) =>
      rollsToAsk(rolls([{ ...piece("T-1", "1", "first"), ...change }], agreed)).length;
    expect(asked({})).toBe(1);
    expect(asked({ isExternal: true })).toBe(0);
    expect(asked({ standing: "reported" })).toBe(0);
    expect(asked({ standing: "reported" }, ["1"])).toBe(1);
    expect(asked({ standing: "gone" }, ["1"])).toBe(0);
    // Theirs is an end of the roll all the same.
    const theirs = { ...piece("T-2", "1", "second", "reported"), isExternal: true };
    expect(rollsToAsk(rolls([piece("T-1", "1", "first"), theirs]))).toEqual([]);
  });

  it("of one sensor alone the other end need only be here; on a lot's certificate it stands, or is reported", () => {
    const with2 = (standing: RollPiece["standing"]) =>
      rolls([piece("T-1", "1", "first"), piece("T-2", "1", "second", standing)]);
    const of = (report: "per-lot" | "per-sensor") =>
      (["here", "reported", "gone"] as const).map(
        (standing) => decideRollEnds(with2(standing), ["T-1"], report).ok,
      );
    expect(of("per-sensor")).toEqual([true, true, false]);
    expect(of("per-lot")).toEqual([false, true, false]);
  });

  it("are signed for where the customer agreed to one end", () => {
    const one = [piece("T-3", "2", "first")];
    expect(decideRollEnds(rolls(one, ["1"]), ["T-3"], "per-lot").ok).toBe(false);
    expect(decideRollEnds(rolls(one, ["2"]), ["T-3"], "per-lot").ok).toBe(true);
  });
});

describe("an agreement on a roll", () => {
  const asked = { lot: "L1", roll: "2" };
  it.each([
    ["accepted", [asked], [], undefined],
    ["completed", [asked], [], "wrong-state"],
    ["accepted", [asked], [asked], "changed-meanwhile"],
    ["accepted", [], [], "rule"],
  ] as const)("on a %s order with %j open and %j agreed: %s", (state, open, agreed, code) => {
    const decided = decideAgreeRoll(state, open, agreed, asked);
    expect(decided.ok ? undefined : decided.refusal.code).toBe(code);
  });
});

it("says of a list at intake which rolls would have one end alone, with what is here", () => {
  const of = (roll: string, end?: "first" | "second") => ({ lot: "L1", roll, ...(end ? { end } : {}) });
  const listed = [of("1", "first"), of("1", "first"), of("2", "first"), of("3"), of("4", "second")];
  expect(onlyOneEnd(listed, [of("2", "second"), of("4", "second")])).toEqual([
    "lot L1, roll 1: only its first end",
    "lot L1, roll 3: nobody said which end",
    "lot L1, roll 4: only its second end",
  ]);
  expect(onlyOneEnd([of("1", "first"), of("1", "second")])).toEqual([]);
});
