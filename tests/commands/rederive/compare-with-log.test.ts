import { describe, expect, it } from "vitest";
import { compareWithLog } from "@/lib/commands/rederive/compare-with-log";
import { endingFact, endingGroundsFact, noteEvent } from "@/lib/commands/rederive/facts";
import type { Facts } from "@/lib/commands/rederive/step";
import { certificateEvents } from "@/lib/domain/certificate/events";

const reasonSha256 = "a".repeat(64);
const decidedAt = "2026-03-05T10:00:00.000Z";

const logged = (grounds: object, actorId = "somebody"): Facts => {
  const facts: Facts = new Map();
  noteEvent(facts, {
    ...{ sequence: 1n, atMicroseconds: 0n, actorId, entityKind: "certificate", entityId: "x" },
    ...{ action: certificateEvents.withdrawn.action, payload: JSON.stringify({ number: "C-1", ...grounds }) },
    ...{ previousHash: new Uint8Array(32), hash: new Uint8Array(32) },
  });
  return facts;
};
const compare = (log: Facts, by = "somebody", kind = "withdrawn") =>
  compareWithLog(
    log,
    log,
    new Map([endingFact("C-1", kind, ""), endingGroundsFact("C-1", by, { decidedAt, reasonSha256 })]),
  );

describe("an ending and what the log tells of it", () => {
  it("agree in kind, person, moment and reason", () => {
    const log = logged({ decidedAt, reasonSha256 });
    expect(compare(log)).toBe("2 records as the log tells");
    expect(() => compare(log, "another")).toThrow(/by somebody, reason .* by another, reason/);
    expect(() => compare(logged({ decidedAt, reasonSha256: "b".repeat(64) }))).toThrow(/the log says/);
  });

  it("agree in kind alone where it was told before moment and reason were", () => {
    expect(compare(logged({}), "another")).toBe("2 records as the log tells");
    expect(() => compare(logged({}), "somebody", "amended")).toThrow(/the log says withdrawn/);
  });
});
