import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import jsQR from "jsqr";
import { describe, expect, it } from "vitest";
import { codeSide } from "@/lib/documents/label/label-code";
import { type SensorLabel, sensorLabels, serialLines } from "@/lib/documents/label/sensor-labels";
import { labelLayoutNames, labelLayouts, labelPlace, labelsPerPage } from "@/lib/domain/sensor/label-layouts";
import { codePath } from "@/lib/drawing/code-path";
import { pdfPages } from "../../support/pdf-text";
import { readQr } from "../../support/read-qr";

const printedAt = new Date("2026-03-04T09:12:00Z");
const label = (tag: string, origin: string, serial = "A1"): SensorLabel => ({
  tag,
  serial,
  typeLetter: "K",
  address: `${origin}/sensors/${tag}`,
});
const labels = [
  label("T-000001", "http://127.0.0.1:3000"),
  label("T-000002", "https://calibration.example", "0000000000000000000000000000000000000000"),
  label("T-000003", "https://calibration.a-laboratory-with-a-long-name.example"),
];

/** The modules that the path's rectangles cover. */
const modulesOf = (drawn: string): ReadonlySet<string> => {
  const dark = new Set<string>();
  for (const [, column, row, width] of drawn.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let at = 0; at < Number(width); at += 1) dark.add(`${row} ${Number(column) + at}`);
  return dark;
};

const has = (program: string, askVersion: string): boolean => {
  try {
    execFileSync(program, [askVersion], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
};

describe("the code on a label", () => {
  it.each(labels.map(({ address }) => address))("as drawn reads back as %s", (address) => {
    const { modules, path: drawn } = codePath(address);
    const dark = modulesOf(drawn);
    expect(readQr((row, column) => dark.has(`${row} ${column}`), modules)).toBe(address);
  });

  it("has modules of at least three printer dots, or is refused", async () => {
    const dot = 25.4 / 203;
    for (let modules = 21; modules <= 41; modules += 4) {
      const side = codeSide(modules)!;
      expect(side / (modules + 8)).toBeGreaterThanOrEqual(3 * dot - 1e-12);
      expect(side).toBeLessThanOrEqual(19.5);
    }
    expect(codeSide(45)).toBeNull();
    const long = label("T-000004", `https://${"long-".repeat(20)}name.example`);
    await expect(sensorLabels([long], printedAt)).rejects.toThrow("too long");
  });
});

type Grey = {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number;
};

/** Read by a decoder that knows nothing of how it was made. */
const decode = ({ width, height, at }: Grey): string | undefined => {
  const pixels = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) pixels.set([at(x, y), at(x, y), at(x, y), 255], (y * width + x) * 4);
  return jsQR(pixels, width, height, { inversionAttempts: "dontInvert" })?.data;
};

describe("a code in three dots a module, with its quiet zone", () => {
  it.each(labels.map(({ address }) => address))("is decoded as %s", (address) => {
    const { modules, path: drawn } = codePath(address);
    const dark = modulesOf(drawn);
    const side = (modules + 8) * 3;
    const at = (x: number, y: number) =>
      dark.has(`${Math.floor(y / 3) - 4} ${Math.floor(x / 3) - 4}`) ? 0 : 255;
    expect(decode({ width: side, height: side, at })).toBe(address);
    // And a code that lost its lower half is not.
    const cut = (x: number, y: number) => (y > side / 2 ? 255 : at(x, y));
    expect(decode({ width: side, height: side, at: cut })).toBeUndefined();
  });
});

/** A binary grey map (PGM, P5): three numbers in text, then a byte a pixel. */
const greyMap = (file: Buffer): Grey => {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.toString("latin1", 0, 60))!;
  const [all, width, height] = [head[0], Number(head[1]), Number(head[2])];
  return { width, height, at: (x, y) => file[all.length + y * width + x] ?? 255 };
};

describe("a layout", () => {
  it.each(labelLayoutNames)("%s keeps its labels apart and on the page", (name) => {
    const layout = labelLayouts[name];
    const places = Array.from({ length: labelsPerPage(layout) }, (_, index) => labelPlace(layout, index, 1));
    expect(new Set(places.map((each) => `${each.leftMillimetre} ${each.topMillimetre}`)).size).toBe(
      places.length,
    );
    if (!layout.sheet) return;
    const last = places.at(-1)!;
    expect(last.leftMillimetre + layout.widthMillimetre).toBeLessThanOrEqual(layout.sheet.widthMillimetre);
    expect(last.topMillimetre + layout.heightMillimetre).toBeLessThanOrEqual(layout.sheet.heightMillimetre);
    expect(layout.sheet.columnPitchMillimetre).toBeGreaterThanOrEqual(layout.widthMillimetre);
    expect(layout.sheet.rowPitchMillimetre).toBeGreaterThanOrEqual(layout.heightMillimetre);
    expect(labelPlace(layout, 0, places.length)).toEqual({ ...last, page: 0 });
    expect(labelPlace(layout, 1, places.length).page).toBe(1);
  });

  it.each(labelLayoutNames)("%s, printed at 203 dpi, is read back label by label", async (name) => {
    if (!has("pdftoppm", "-v")) {
      console.warn(
        `Labels on ${name} are not read as printed: pdftoppm (poppler-utils) is not installed here.`,
      );
      return;
    }
    const layout = labelLayouts[name];
    const folder = mkdtempSync(path.join(tmpdir(), "emfolio-layout-"));
    try {
      const file = path.join(folder, "labels.pdf");
      const startAt = layout.sheet ? labelsPerPage(layout) - 1 : 1;
      writeFileSync(file, await sensorLabels(labels, printedAt, layout, startAt));
      execFileSync("pdftoppm", ["-r", "203", "-gray", file, path.join(folder, "page")]);
      const pages = readdirSync(folder)
        .filter((each) => each.endsWith(".pgm"))
        .sort()
        .map((each) => greyMap(readFileSync(path.join(folder, each))));
      const dots = (millimetre: number) => Math.round((millimetre * 203) / 25.4);
      const read = labels.map((_, index) => {
        const { page, leftMillimetre, topMillimetre } = labelPlace(layout, index, startAt);
        const [left, top] = [dots(leftMillimetre), dots(topMillimetre)];
        return decode({
          width: dots(layout.widthMillimetre),
          height: dots(layout.heightMillimetre),
          at: (x, y) => pages[page]?.at(left + x, top + y) ?? 255,
        });
      });
      expect(read).toEqual(labels.map(({ address }) => address));
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe("a sheet of labels", () => {
  it("has one page of 50 by 25 mm for each, with tag, serial and type, and the same bytes each time", async () => {
    const bytes = await sensorLabels(labels, printedAt);
    const pages = await pdfPages(bytes);
    expect(pages).toHaveLength(3);
    for (const [index, text] of pages.entries()) {
      expect(text).toContain(labels[index]!.tag);
      expect(text).toContain("Type K");
      expect(text.replace(/\s/g, "")).toContain(`Serial${labels[index]!.serial}`);
    }
    const boxes = [
      ...Buffer.from(bytes)
        .toString("latin1")
        .matchAll(/\/MediaBox \[([^\]]+)\]/g),
    ];
    expect(boxes).toHaveLength(3);
    for (const [, box] of boxes) {
      const [, , width = 0, height = 0] = box!.trim().split(/\s+/).map(Number);
      expect(width).toBeCloseTo((50 * 72) / 25.4, 1);
      expect(height).toBeCloseTo((25 * 72) / 25.4, 1);
    }
    expect(Buffer.compare(bytes, await sensorLabels(labels, printedAt))).toBe(0);
  });

  it("breaks a long serial without adding to it, and says where it is cut", () => {
    expect(serialLines("A1")).toEqual({ size: 10, lines: ["A1"] });
    expect(serialLines("x".repeat(64)).lines.join("")).toBe("x".repeat(64));
    const cut = serialLines("x".repeat(65)).lines;
    expect(cut).toHaveLength(4);
    expect(cut.at(-1)?.endsWith("…")).toBe(true);
  });

  it("printed at 203 dpi, is read by a scanner's software", async () => {
    if (!has("pdftoppm", "-v") || !has("zbarimg", "--version")) {
      console.warn(
        "Not scanned as printed: pdftoppm (poppler-utils) and zbarimg (zbar-tools) are not installed here.",
      );
      return;
    }
    const folder = mkdtempSync(path.join(tmpdir(), "emfolio-label-"));
    try {
      const file = path.join(folder, "labels.pdf");
      writeFileSync(file, await sensorLabels(labels, printedAt));
      execFileSync("pdftoppm", ["-r", "203", "-png", file, path.join(folder, "label")]);
      const images = readdirSync(folder)
        .filter((name) => name.endsWith(".png"))
        .sort();
      const read = images.map((name) =>
        execFileSync("zbarimg", ["-q", "--raw", path.join(folder, name)], {
          stdio: ["ignore", "pipe", "ignore"],
        })
          .toString()
          .trim(),
      );
      expect(read).toEqual(labels.map(({ address }) => address));
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
