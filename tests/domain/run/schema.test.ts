import { describe, expect, it } from "vitest";
import { AcceptWindowInput } from "@/lib/domain/run/schema";

describe("the ends of a window", () => {
  const read = (fromSeconds: number, toSeconds: number) =>
    AcceptWindowInput.safeParse({ run: "R-2026-0001", setpoint: 1, fromSeconds, toSeconds });

  it("are refused at the end where that is not after the beginning", () => {
    expect(read(600, 900).success).toBe(true);
    for (const [from, to] of [
      [900, 600],
      [600, 600],
    ] as const)
      expect(read(from, to).error?.issues).toMatchObject([
        { path: ["toSeconds"], message: expect.stringContaining("after the beginning") },
      ]);
  });
});
