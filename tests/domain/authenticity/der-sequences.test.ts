import { expect, it } from "vitest";
import { derSequences } from "@/lib/domain/authenticity/der-sequences";

const short = [0x30, 0x02, 0x01, 0x02];
const long = [0x30, 0x81, 0x80, ...Array<number>(128).fill(7)];
const longer = [0x30, 0x82, 0x01, 0x00, ...Array<number>(256).fill(9)];

it("takes apart what stands one after the other", () => {
  const all = [short, long, longer, short];
  expect(derSequences(Uint8Array.from(all.flat())).map((part) => [...part])).toEqual(all);
  expect(derSequences(new Uint8Array())).toEqual([]);
});

it("leaves out what is no whole value", () => {
  expect(derSequences(Uint8Array.from([...short, ...long.slice(0, 50)])).map((part) => [...part])).toEqual([
    short,
  ]);
  expect(derSequences(Uint8Array.from([0x30, 0x80, 0, 0]))).toEqual([]);
  expect(derSequences(Uint8Array.from([0x30]))).toEqual([]);
});
