import { describe, expect, it } from "vitest";
import { type BlockDraft, placeBlock } from "@/lib/domain/run/place-block";

const now = new Date("2026-10-15T08:00:00Z");
const draft = (clock: BlockDraft["clock"], times: readonly number[], channel = "1"): BlockDraft => ({
  clock,
  channels: [
    {
      channel,
      times: Float64Array.from(times),
      microvolts: new Float64Array(times.length),
      polarity: new Int8Array(times.length).fill(1),
    },
  ],
});
const fresh = { startedAt: null, lastSeconds: new Map<string, number>() };
const placed = (...given: Parameters<typeof placeBlock>) => {
  const result = placeBlock(...given);
  if (!result.ok) throw new Error(result.refusal.message);
  return { startedAt: result.value.startedAt.toISOString(), times: [...result.value.channels[0]!.times] };
};

describe("the clock of a run", () => {
  it("begins with the whole second of the first moment", () => {
    const base = Date.UTC(2026, 9, 15, 6) * 1000;
    expect(
      placed(draft("microseconds-since-1970", [base + 1_500, base + 10_001_500]), fresh, null, now),
    ).toEqual({
      startedAt: "2026-10-15T06:00:00.000Z",
      times: [0.0015, 10.0015],
    });
  });

  it("begins when it is said to; unsaid, so that a file in seconds ends when it arrives", () => {
    const told = new Date("2026-10-15T05:00:00Z");
    expect(placed(draft("seconds", [0, 600]), fresh, told, now).startedAt).toBe("2026-10-15T05:00:00.000Z");
    expect(placed(draft("seconds", [0, 600]), fresh, null, now).startedAt).toBe("2026-10-15T07:50:00.000Z");
  });

  it("stays what it was for every later block, which has to follow", () => {
    const run = { startedAt: new Date("2026-10-15T06:00:00Z"), lastSeconds: new Map([["1", 600]]) };
    expect(placed(draft("seconds", [610]), run, null, now).times).toEqual([610]);
    const refused = placeBlock(draft("seconds", [600]), run, null, now);
    expect(refused).toMatchObject({ ok: false, refusal: { code: "rule" } });
    expect(placeBlock(draft("seconds", [-1], "2"), run, null, now)).toMatchObject({ ok: false });
  });

  it("does not reach into the future by more than clocks disagree", () => {
    const told = new Date("2026-10-15T08:00:00Z");
    expect(placeBlock(draft("seconds", [0, 3600]), fresh, told, now).ok).toBe(true);
    expect(placeBlock(draft("seconds", [0, 3601]), fresh, told, now).ok).toBe(false);
  });
});
