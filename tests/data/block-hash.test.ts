import { describe, expect, it } from "vitest";
import { digestOfRoots, joinLeaves, leafOf, provesChannel, rootOf } from "@/lib/data/evidence/block-hash";
import {
  bytesOfFloats,
  bytesOfPolarity,
  floatsOfBytes,
  polarityOfBytes,
} from "@/lib/domain/evidence/readings-bytes";

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString("hex");

const bytesFrom = (first: number): Uint8Array => Uint8Array.from({ length: 16 }, (_, index) => first + index);

const channelOf = (
  channel: string,
  salt: Uint8Array,
  times: readonly number[],
  values: readonly number[],
  polarity: readonly number[],
) => ({
  channel,
  count: times.length,
  times: bytesOfFloats(Float64Array.from(times)),
  values: bytesOfFloats(Float64Array.from(values)),
  polarity: bytesOfPolarity(Int8Array.from(polarity)),
  salt,
});

// The vector of decision 0004, computed from its text by another program in another language.
const first = channelOf("ch-1", bytesFrom(0), [0, 10, 20.5], [9585.25, -0, 5e-324], [1, 1, -1]);
const second = channelOf("Kanal Ω", bytesFrom(16), [1], [-9586.125], [-1]);
const leaves = [
  "93597fe8b5d4434d6706a5a70fc3500335e1f2a6fa914367ebabb9e70ecd0a24",
  "edbce8a15ad10dbf6b7ac808a07823a65f1bbff03649b0b8545194848fbfdcbb",
];
const root = "b9857bcd8a329c56984b2d44b3cb42f4ce95e974196127faf69227768c2a8924";

describe("the hash of a block", () => {
  it("agrees with the vector: leaves, root, digest of blocks", () => {
    expect([hex(leafOf(first)), hex(leafOf(second))]).toEqual(leaves);
    expect(hex(rootOf([leafOf(first), leafOf(second)]))).toBe(root);
    expect(hex(digestOfRoots([rootOf([leafOf(first), leafOf(second)])]))).toBe(
      "73ec1703fc9eef92bb4e7833cd3436c94687545ce1578895474dfda4d14b855c",
    );
    expect(hex(digestOfRoots([]))).toBe("4322fd2bc0a137d1375b37b3b2e2b4715b3d3dd7ca9682438d4fea0f8437fad3");
  });

  it("changes with every bit and with the order", () => {
    const changed = [
      { ...first, channel: "ch-2" },
      { ...first, salt: bytesFrom(1) },
      channelOf("ch-1", first.salt, [0, 10, 20.5], [9585.25, 0, 5e-324], [1, 1, -1]), // −0 is not 0
      channelOf("ch-1", first.salt, [0, 10, 20.5], [9585.250000000002, -0, 5e-324], [1, 1, -1]),
      channelOf("ch-1", first.salt, [0, 10, 20.500000000000004], [9585.25, -0, 5e-324], [1, 1, -1]),
      channelOf("ch-1", first.salt, [0, 10, 20.5], [9585.25, -0, 5e-324], [1, -1, -1]),
      { ...first, times: first.values, values: first.times },
    ];
    const all = [first, ...changed].map((channel) => hex(leafOf(channel)));
    expect(new Set(all).size).toBe(all.length);
    expect(hex(rootOf([leafOf(second), leafOf(first)]))).not.toBe(root);
    expect(hex(rootOf([leafOf(first)]))).not.toBe(hex(leafOf(first)));
  });

  it("proves one channel from the leaves alone, without the readings of the others", () => {
    const block = {
      leaves: joinLeaves([leafOf(first), leafOf(second)]),
      root: rootOf([leafOf(first), leafOf(second)]),
    };
    expect(provesChannel(block, 0, first)).toBe(true);
    expect(provesChannel(block, 1, second)).toBe(true);
    expect(provesChannel(block, 1, first)).toBe(false);
    expect(provesChannel(block, 2, first)).toBe(false);
    expect(provesChannel({ ...block, root: leafOf(first) }, 0, first)).toBe(false);
    const forged = joinLeaves([leafOf(first), leafOf(first)]);
    expect(provesChannel({ ...block, leaves: forged }, 0, first)).toBe(false);
    const other = channelOf("ch-1", first.salt, [0, 10, 20.5], [9585.26, -0, 5e-324], [1, 1, -1]);
    expect(provesChannel(block, 0, other)).toBe(false);
  });
});

describe("readings as bytes", () => {
  it("are little-endian binary64 and signed bytes", () => {
    expect(hex(bytesOfFloats(Float64Array.of(1, -0)))).toBe("000000000000f03f0000000000000080");
    expect(hex(bytesOfPolarity(Int8Array.of(1, -1)))).toBe("01ff");
  });

  it("come back from any place in a buffer", () => {
    const values = Float64Array.of(Number.MAX_VALUE, -5e-324, 0.1);
    const shifted = new Uint8Array(25);
    shifted.set(bytesOfFloats(values), 1);
    expect(floatsOfBytes(shifted.subarray(1))).toEqual(values);
    expect(polarityOfBytes(Uint8Array.of(1, 255))).toEqual(Int8Array.of(1, -1));
  });

  it("of a view are of the view only", () => {
    const whole = Float64Array.of(1, 2, 3, 4);
    expect(floatsOfBytes(bytesOfFloats(whole.subarray(1, 3)))).toEqual(Float64Array.of(2, 3));
  });

  it("that are no whole number of values are refused", () => {
    expect(() => floatsOfBytes(new Uint8Array(12))).toThrow(RangeError);
  });
});
