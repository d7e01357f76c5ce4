import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import {
  chainBeginning,
  closeChain,
  describeBreak,
  encodeEvent,
  followChain,
  type StoredEvent,
} from "@/lib/domain/audit/chain";

const sha256 = (bytes: Uint8Array): Uint8Array => createHash("sha256").update(bytes).digest();
const bytesOf = (hex: string): Uint8Array => Uint8Array.from(Buffer.from(hex, "hex"));

// The vector of decision 0003, computed from its text by another program in another language.
const first: StoredEvent = {
  sequence: 1n,
  atMicroseconds: 1772442000123457n,
  actorId: "system:seed",
  action: "order.accepted",
  entityKind: "order",
  entityId: "o-1",
  payload: '{"note":"Ω","number":"O-2026-0001"}',
  previousHash: new Uint8Array(32),
  hash: bytesOf("f067145a861eaf1bbfb4a9d81b85ba25d0a00472012a8795e86960f5adf3271d"),
};

describe("the audit chain", () => {
  it("agrees with the vector", () => {
    expect(sha256(encodeEvent(first))).toEqual(Buffer.from(first.hash));
    expect(followChain(chainBeginning, first, sha256)).toEqual({
      ok: true,
      head: { sequence: 1n, hash: first.hash },
    });
  });

  it.each<[string, Partial<StoredEvent>, string]>([
    ["another payload", { payload: '{"note":"Ω","number":"O-2026-0002"}' }, "changed"],
    ["a microsecond", { atMicroseconds: 1772442000123458n }, "changed"],
    ["text between fields", { action: "order.accepte", entityKind: "dorder" }, "changed"],
    ["the place", { sequence: 2n }, "missing"],
    ["the link", { previousHash: new Uint8Array(32).fill(1) }, "not-linked"],
    ["a short hash", { hash: first.hash.slice(0, 31) }, "changed"],
  ])("breaks with %s", (_name, change, reason) => {
    expect(followChain(chainBeginning, { ...first, ...change }, sha256)).toEqual({
      ok: false,
      broken: { sequence: 1n, reason },
    });
  });

  it("must end where its head stands", () => {
    const reached = { sequence: 5n, hash: first.hash };
    expect(closeChain(reached, reached)).toBeNull();
    expect(closeChain(reached, { ...reached, sequence: 6n })).toEqual({ sequence: 6n, reason: "cut" });
    expect(closeChain(reached, { ...reached, sequence: 4n })).toEqual({
      sequence: 5n,
      reason: "beyond-head",
    });
    expect(closeChain(reached, { ...reached, hash: new Uint8Array(32) })).toEqual({
      sequence: 5n,
      reason: "changed",
    });
  });

  it("says in words where it breaks", () => {
    expect(describeBreak({ sequence: 12n, reason: "missing" })).toBe("Event 12 is missing.");
  });
});
