import { elementaryFunctions, platinum, thermocouples } from "./golden-bits/functions";
import { budgets, deviations, quality, verdicts } from "./golden-bits/results";
import { uniformity } from "./golden-bits/uniformity";

/** Everything in metrology that could come out differently in another engine: numbers, and the words made of them. */
function* everything(): Generator<unknown> {
  yield* elementaryFunctions();
  yield* thermocouples();
  yield* platinum();
  yield* budgets();
  yield* deviations();
  yield* verdicts();
  yield* quality();
  yield* uniformity();
}

const view = new DataView(new ArrayBuffer(8));

/** The numbers in a value, depth first; of a text its characters, of a flag 0 or 1; a refusal's wording is free. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === "number") yield value;
  else if (typeof value === "boolean") yield value ? 1 : 0;
  else if (typeof value === "string") for (const character of value) yield character.codePointAt(0) as number;
  else if (value instanceof Float64Array) yield* value;
  else if (value instanceof Object && "problem" in value) yield Number.NaN;
  else if (value instanceof Map) for (const entry of value) yield* numbersIn(entry);
  else if (typeof value === "object" && value !== null)
    for (const part of Object.values(value)) yield* numbersIn(part);
}

/** FNV-1a over the two halves of each number's bits, in two 32-bit lanes, as hex. Runs in Node and in a browser. */
export function goldenBits(): string {
  let [one, other, count] = [0x811c9dc5, 0xcbf29ce4, 0];
  for (const value of everything()) {
    for (const x of numbersIn(value)) {
      // The payload of a NaN is the engine's own affair; that it is one is not.
      view.setFloat64(0, Number.isNaN(x) ? Number.NaN : x);
      one = Math.imul(Math.imul(one ^ view.getUint32(0), 0x01000193) ^ view.getUint32(4), 0x01000193);
      other = Math.imul((other ^ view.getUint32(4)) + (one >>> 7), 0x01000193) ^ (other >>> 15);
      count += 1;
    }
  }
  return `${count}-${[one, other].map((lane) => (lane >>> 0).toString(16).padStart(8, "0")).join("")}`;
}

/** Changes only together with the engine version. */
export const GOLDEN = { engineVersion: "2.1.0", bits: "46108-2eee59719606bafa" } as const;
