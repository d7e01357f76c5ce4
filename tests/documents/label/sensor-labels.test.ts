import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { codePath } from "@/lib/drawing/code-path";
import { codeSide } from "@/lib/documents/label/label-code";
import { type SensorLabel, sensorLabels, serialLines } from "@/lib/documents/label/sensor-labels";
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
