import { describe, expect, it } from "vitest";
import { Checkpoint, holdCheckpoint } from "@/lib/domain/audit/checkpoint";

const checkpoint: Checkpoint = { sequence: 12, hash: "0f".repeat(32) };

describe("a checkpoint", () => {
  it("holds where the log has the same hash at the same place", () => {
    expect(holdCheckpoint(checkpoint, checkpoint.hash)).toBe("same");
  });

  it("tells a log that was rewritten from one that ends before it", () => {
    expect(holdCheckpoint(checkpoint, "f0".repeat(32))).toBe("different");
    expect(holdCheckpoint(checkpoint, null)).toBe("missing");
  });

  it("is of an event that was there, with a whole hash", () => {
    for (const wrong of [{ sequence: 0 }, { sequence: 1.5 }, { hash: "0f" }, { hash: "0F".repeat(32) }])
      expect(Checkpoint.safeParse({ ...checkpoint, ...wrong }).success).toBe(false);
  });
});
