import { crc32 } from "node:zlib";
import { describe, expect, it } from "vitest";
import { photoLimitBytes } from "@/lib/domain/sensor/photo";
import { readPhoto } from "@/lib/files/image/read-photo";
import { jpeg, webp } from "../../support/photos";
import { png } from "../../support/png";

const photoOf = (bytes: Uint8Array) => {
  const read = readPhoto(bytes);
  return read.ok ? read.photo : expect.fail(read.message);
};
const textOf = (bytes: Uint8Array) => Buffer.from(bytes).toString("latin1");
const messageOf = (bytes: Uint8Array) => {
  const read = readPhoto(bytes);
  return read.ok ? "taken" : read.message;
};

const withText = (bytes: Uint8Array, type: string, text: string): Uint8Array => {
  const named = Buffer.from(type + text, "latin1");
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(text.length);
  check.writeUInt32BE(crc32(named));
  const at = 33;
  return Uint8Array.from(Buffer.concat([bytes.subarray(0, at), length, named, check, bytes.subarray(at)]));
};

describe("a photo", () => {
  it("as JPEG loses place, words, camera and what follows its end, and nothing of its picture", () => {
    const photo = photoOf(jpeg(640, 480, { after: "a second picture with GPS51.4772" }));
    expect(photo).toMatchObject({ mediaType: "image/jpeg", width: 640, height: 480 });
    const kept = textOf(photo.bytes);
    for (const gone of ["GPS", "Exif", "adobe", "MPF", "A. Person", "second"])
      expect(kept).not.toContain(gone);
    for (const stays of ["JFIF", "ICC_PROFILE", "\x12\xff\x00\x34\xff\xd0\x56"])
      expect(kept).toContain(stays);
    expect(kept.endsWith("\xff\xd9")).toBe(true);
    expect(photoOf(photo.bytes).bytes).toEqual(photo.bytes);
  });

  it("held sideways still stands upright: the orientation alone is kept", () => {
    const kept = photoOf(jpeg(640, 480, { orientation: 6 })).bytes;
    expect(textOf(kept)).toContain("Exif\0\0MM");
    expect(textOf(kept)).not.toContain("GPS");
    expect(photoOf(kept).bytes).toEqual(kept);
  });

  it("as PNG loses texts, and keeps its picture", () => {
    const plain = png(20, 10);
    const read = photoOf(withText(withText(plain, "tEXt", "Author\0A. Person"), "eXIf", "GPS51.4772"));
    expect(read).toMatchObject({ mediaType: "image/png", width: 20, height: 10 });
    expect(Buffer.from(read.bytes).equals(Buffer.from(plain))).toBe(true);
  });

  it("as WebP loses EXIF and XMP, and says no more that it has them", () => {
    const read = photoOf(
      webp(300, 200, [
        ["EXIF", "GPS51.4772!"],
        ["XMP ", "A. Person"],
        ["JUNK", "anything"],
      ]),
    );
    expect(read).toMatchObject({ mediaType: "image/webp", width: 300, height: 200 });
    for (const gone of ["GPS", "EXIF", "XMP", "JUNK"]) expect(textOf(read.bytes)).not.toContain(gone);
    expect(Buffer.from(read.bytes).equals(Buffer.from(photoOf(webp(300, 200)).bytes))).toBe(true);
    expect(read.bytes[20]).toBe(0);
  });

  it.each([
    ["nothing", new Uint8Array(), "The file is empty"],
    ["a web page", Buffer.from("<html><script>alert(1)</script>"), "This is no JPEG, PNG or WebP"],
    ["a drawing that runs", Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="x()"/>'), "no JPEG"],
    ["a JPEG of the first bytes only", Buffer.from([0xff, 0xd8, 0xff]), "cut short"],
    ["a JPEG without a picture", Buffer.from([0xff, 0xd8, 0xff, 0xd9]), "has no picture"],
    [
      "a web page that begins as a JPEG",
      Buffer.from("\xff\xd8\xff\xe0\x00\x04ab<html>", "latin1"),
      "damaged",
    ],
    ["half a JPEG", jpeg(10, 10).slice(0, 150), "cut short"],
    ["a JPEG packed by arithmetic", jpeg(10, 10, { frame: 0xc9 }), "hardly used"],
    ["a JPEG of no width", jpeg(0, 10), "0 × 10 pixels"],
    ["a JPEG of too many pixels", jpeg(60_000, 60_000), "at most 50000000"],
    ["half a PNG", png(10, 10).slice(0, 40), "cut short"],
    ["a WebP that moves", webp(10, 10, [["ANIM", "xxxxxx"]]), "it moves"],
    ["half a WebP", webp(10, 10).slice(0, 30), "cut short"],
    ["a WebP without a picture", Buffer.from("RIFF\x0c\0\0\0WEBPJUNK\0\0\0\0", "latin1"), "no picture"],
    ["too much", new Uint8Array(photoLimitBytes + 1), "at most 4000000 are taken"],
  ])("is not %s", (_, bytes, said) => {
    expect(messageOf(Uint8Array.from(bytes))).toContain(said);
  });
});
