import { describe, expect, it } from "vitest";
import { normalProbability } from "@/lib/metrology/number/normal";
import { addNormals, standardNormal } from "@/lib/metrology/number/normal-deviate";
import { addRectangles, createStream, uniform } from "@/lib/metrology/number/random";
import { fillWords, jump } from "@/lib/metrology/number/xoshiro";

const hexadecimal = (words: Int32Array): string[] =>
  [...words].map((word) => (word >>> 0).toString(16).padStart(8, "0"));

describe("xoshiro128**", () => {
  // Made by the authors' reference program, as the test data of the public repository edorfaus/xoshiro-6502
  // (test-rom/testdata.asm) states: first four words, the state after them, and the state after one jump().
  const state = () => Int32Array.of(0x964d4a0c, 0xd40ab895, 0xad7fdecb, 0x3006f0f0);

  it("gives the words and the state of the reference program", () => {
    const at = state();
    const words = new Int32Array(4);
    fillWords(at, words);
    expect(hexadecimal(words)).toEqual(["f1391922", "6fe53806", "a5be2840", "f510ee70"]);
    expect(hexadecimal(at)).toEqual(["fc65379c", "52006d70", "87487639", "f1908343"]);
  });

  it("jumps to the states of the reference program", () => {
    const at = state();
    jump(at);
    expect(hexadecimal(at)).toEqual(["2a6dd50d", "01177499", "d7eb7d01", "ddc48284"]);
  });
});

describe("a stream", () => {
  const first = (seed: number, number = 0): number[] => {
    const stream = createStream(seed, number);
    return Array.from({ length: 5 }, () => uniform(stream));
  };

  it("is the same for the same seed and number, and another for any other", () => {
    expect(first(7, 3)).toEqual(first(7, 3));
    const starts = [first(7), first(8), first(7, 1), first(7, 2), first(7 + 4294967296), first(0)];
    expect(new Set(starts.map(([x]) => x)).size).toBe(starts.length);
  });

  it("has these bits in every engine", () => {
    const stream = createStream(2026, 1);
    const drawn = [uniform(stream), standardNormal(stream), uniform(stream), standardNormal(stream)];
    expect(drawn).toEqual([0.8860045063971825, 0.498475619649347, 0.2683909162775502, 0.596671842031663]);
  });

  it("jumps by 2^64 words from one number to the next", () => {
    const one = createStream(5);
    jump(one.state);
    const next = createStream(5, 1);
    expect([...next.state]).toEqual([...one.state]);
  });

  it("is uniform: mean, variance, and as many in each twentieth", () => {
    const stream = createStream(1);
    const counts = new Array(20).fill(0);
    let [sum, squares] = [0, 0];
    for (let i = 0; i < 200_000; i += 1) {
      const u = uniform(stream);
      counts[Math.floor(u * 20)] += 1;
      sum += u;
      squares += (u - 0.5) ** 2;
    }
    expect(counts).toHaveLength(20);
    // Four standard deviations of each statistic.
    expect(Math.abs(sum / 200_000 - 0.5)).toBeLessThan(4 / Math.sqrt(12 * 200_000));
    expect(Math.abs(squares / 200_000 - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / 200_000));
    // χ² with 19 degrees of freedom: 43.8 is exceeded once in a thousand.
    const chiSquare = counts.reduce((total, count) => total + (count - 10_000) ** 2 / 10_000, 0);
    expect(chiSquare).toBeLessThan(43.8);
  });
});

describe("standardNormal", () => {
  it("fills the normal distribution, into its tails and where layers meet", () => {
    const stream = createStream(3);
    const count = 1_000_000;
    const values = new Float64Array(count);
    addNormals(stream, Float64Array.of(1), values, 0, count);
    values.sort();
    // Kolmogorov: √n·D exceeds 1.95 once in a thousand.
    let distance = 0;
    for (let i = 0; i < count; i += 97) {
      const p = normalProbability(values[i] as number);
      distance = Math.max(distance, Math.abs(p - i / count), Math.abs(p - (i + 1) / count));
    }
    expect(distance * Math.sqrt(count)).toBeLessThan(1.95);
    // Beyond 3.654 the tail's own method: 258 expected (2·Φ(−3.654)·10⁶), each side about half.
    const low = values.findIndex((x) => x >= -3.654152885361009);
    const high = count - values.findIndex((x) => x > 3.654152885361009);
    const expected = count * normalProbability(-3.654152885361009);
    for (const beyond of [low, high]) {
      expect(Math.abs(beyond - expected)).toBeLessThan(4 * Math.sqrt(expected));
    }
  });

  it("draws one by one what addNormals draws for many", () => {
    const [one, many] = [createStream(4), createStream(4)];
    const values = new Float64Array(30_000).fill(2);
    addNormals(many, Float64Array.of(1, -3), values, 0, values.length);
    for (const value of values) {
      const first = standardNormal(one);
      expect(value).toBe(2 + (first + -3 * standardNormal(one)));
    }
    expect(uniform(many)).toBe(uniform(one));
  });
});

describe("addRectangles", () => {
  it("draws uniform's numbers over the whole width", () => {
    const [one, many] = [createStream(4), createStream(4)];
    const values = new Float64Array(5000);
    addRectangles(many, Float64Array.of(2, 0.5), values, 0, values.length);
    for (const value of values) {
      const first = 2 * (2 * uniform(one) - 1);
      expect(value).toBe(first + 0.5 * (2 * uniform(one) - 1));
    }
    expect(uniform(many)).toBe(uniform(one));
  });
});
