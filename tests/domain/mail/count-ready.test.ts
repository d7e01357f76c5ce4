import { describe, expect, it } from "vitest";
import { countReady, type Happened, type SignedTogether } from "@/lib/domain/mail/count-ready";

/* What was signed together is told together, once, and nothing is told that is not there yet. */

type Step = readonly [certificate: number, happened: Happened];

const untouched: SignedTogether = { hasFile: false, hasEnded: false, failures: 0 };

/** What the customer is told, step by step, of certificates that nothing happened to before. */
const told = (count: number, steps: readonly Step[]): readonly number[] => {
  const all = Array.from({ length: count }, () => untouched);
  return steps.map(([at, happened]) => {
    const before = all[at] ?? untouched;
    const own = {
      hasFile: before.hasFile || happened === "issued",
      hasEnded: before.hasEnded || happened === "withdrawn",
      failures: before.failures + (happened === "attempt-failed" ? 1 : 0),
    };
    all[at] = own;
    const others = all.filter((_, other) => other !== at);
    return countReady(happened, own, others);
  });
};

describe("how many certificates are ready", () => {
  it.each<readonly [string, number, string, readonly number[]]>([
    ["one", 1, "0 issued", [1]],
    ["three, when the last is made", 3, "2 issued, 0 issued, 1 issued", [0, 0, 3]],
    [
      "one that failed keeps no letter waiting, and has its own",
      2,
      "0 issued, 1 attempt-failed, 1 attempt-failed, 1 issued",
      [0, 1, 0, 1],
    ],
    [
      "one that failed and is made before the others is told with them",
      2,
      "1 attempt-failed, 1 issued, 0 issued",
      [0, 0, 2],
    ],
    ["one that is withdrawn unmade is not counted", 2, "0 issued, 1 withdrawn", [0, 1]],
    ["one that is withdrawn later tells nothing again", 2, "0 issued, 1 issued, 1 withdrawn", [0, 2, 0]],
    ["none of a failure alone", 1, "0 attempt-failed", [0]],
  ])("%s", (_, count, steps, expected) => {
    const read = steps.split(", ").map((step): Step => {
      const [at, happened] = step.split(" ");
      return [Number(at), happened as Happened];
    });
    expect(told(count, read)).toEqual(expected);
  });
});
