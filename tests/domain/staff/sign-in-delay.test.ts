import { describe, expect, it } from "vitest";
import { signInDelay } from "@/lib/domain/staff/sign-in-delay";

const now = new Date("2026-03-04T10:00:00Z");
const ago = (seconds: number, succeeded = false) => ({
  succeeded,
  at: new Date(now.getTime() - seconds * 1000),
});
const failures = (count: number, lastSecondsAgo = 0) =>
  Array.from({ length: count }, (_, index) => ago(lastSecondsAgo + index));

describe("signInDelay", () => {
  it("lets the first failures pass", () => {
    expect(signInDelay([], now)).toBe(0);
    expect(signInDelay(failures(4), now)).toBe(0);
  });

  it.each([
    [5, 2],
    [6, 4],
    [7, 8],
    [12, 256],
    [13, 300],
    [40, 300],
  ])("after %i failures waits %i seconds, never more than five minutes", (count, seconds) => {
    expect(signInDelay(failures(count), now)).toBe(seconds);
  });

  it("counts the wait from the last failure", () => {
    expect(signInDelay(failures(6, 3), now)).toBe(1);
    expect(signInDelay(failures(6, 4), now)).toBe(0);
  });

  it("forgets after a success, and after a quarter of an hour", () => {
    expect(signInDelay([...failures(9, 10), ago(5, true)], now)).toBe(0);
    expect(signInDelay(failures(9, 15 * 60), now)).toBe(0);
  });
});
