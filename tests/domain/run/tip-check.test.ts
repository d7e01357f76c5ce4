import { describe, expect, it } from "vitest";
import { assessTipCheck, tipCheckRemedy } from "@/lib/domain/run/tip-check";

describe("a warmed tip", () => {
  it("leaves nothing to do where it passed, and names the remedy where it did not", () => {
    const remedyOf = (riseMicrovolt: number, onlyThisChannel: boolean) =>
      tipCheckRemedy(assessTipCheck({ riseMicrovolt, onlyThisChannel }));
    expect(remedyOf(20, true)).toBeNull();
    expect(remedyOf(19, true)).toMatch(/^Rise too small: 20 µV or more .* warm it again/);
    expect(remedyOf(200, false)).toMatch(/^Other channels moved.* warm it again/);
  });
});
