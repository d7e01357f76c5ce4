import { describe, expect, it } from "vitest";
import { markLimitBytes, readMark } from "@/lib/files/image/read-mark";
import { png } from "../../support/png";

const said = (bytes: Uint8Array): string => {
  const read = readMark(bytes);
  return read.ok ? `${read.image.mediaType} ${read.image.width} × ${read.image.height}` : read.message;
};
const whole = png(20, 10);
const changed = (at: number, byte: number) => {
  const copy = Uint8Array.from(whole);
  copy[at] = byte;
  return copy;
};
/** Start of image, baseline frame of 20 × 10, start of scan, end of image; no picture between. */
const jpeg = (...more: number[]) =>
  Uint8Array.from([
    ...[0xff, 0xd8],
    ...[0xff, 0xc0, 0, 11, 8, 0, 10, 0, 20, 1, 1, 0x11, 0],
    ...(more.length > 0 ? more : [0xff, 0xda, 0, 8, 1, 1, 0, 0, 0x3f, 0, 0xff, 0xd9]),
  ]);

describe("an accreditation mark as it comes", () => {
  it("is a whole PNG or a JPEG, and its size is known", () => {
    expect(said(whole)).toBe("image/png 20 × 10");
    expect(said(jpeg())).toBe("image/jpeg 20 × 10");
  });

  it.each([
    ["nothing", new Uint8Array(), "empty"],
    [
      "a drawing that a program would run",
      new TextEncoder().encode("<svg onload='x()'/>"),
      "neither a PNG nor a JPEG",
    ],
    ["too much", Uint8Array.from({ length: markLimitBytes + 1 }, () => 0x89), "at most"],
    ["a PNG cut short", whole.slice(0, -13), "cut short"],
    ["a PNG cut in its header", whole.slice(0, 20), "cut short"],
    ["a damaged part", changed(20, 99), "damaged"],
    ["another beginning", changed(3, 0), "begin"],
    ["an interlaced one", png(20, 10, { interlace: 1 }), "interlaced"],
    ["unknown colours", png(20, 10, { colourType: 5 }), "colours"],
    ["a picture of fewer rows", png(20, 10, { rows: 9 }), "not of its size"],
    [
      "a picture of more rows than it says",
      png(20, 10, { rows: 4000 }),
      "cannot be unpacked|not of its size",
    ],
    ["one that would fill the memory", png(8000, 1, { rows: 1 }), "at most 3000"],
    ["a JPEG without an end", jpeg(0xff, 0xda, 0, 8, 1, 1, 0, 0, 0x3f, 0, 0, 0), "cut short"],
    ["a JPEG without a picture", jpeg(0xff, 0xd9), "no picture|cut short"],
  ])("is refused with its fault: %s", (_, bytes, message) => {
    expect(said(bytes)).toMatch(new RegExp(message));
  });

  it("is refused or read for every single byte changed, and never breaks", () => {
    for (let at = 0; at < whole.length; at += 1)
      expect(said(changed(at, (whole[at] ?? 0) ^ 0xff))).toMatch(/^(The|This)/);
  });
});
