import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type GreyImage, readPgm } from "./grey-image";

const asked = spawnSync("pdftoppm", ["-v"], { encoding: "utf8" });

/** Debian's poppler-utils. Where it is missing, a test that needs it is left out and says so. */
export const canRasterise = asked.status === 0;

/** "22.12.0"; another version may place or smooth letters otherwise. */
export const rasteriserVersion = /version ([\d.]+)/.exec(`${asked.stderr}${asked.stdout}`)?.[1] ?? "unknown";

export const withoutRasteriser = "pdftoppm (poppler-utils) is not installed here";

/** The pages as they print, first to last, in shades of grey. */
export const rasterise = (
  pdf: Uint8Array,
  dotsPerInch: number,
  pages: { readonly first?: number; readonly last?: number } = {},
): readonly GreyImage[] => {
  const folder = mkdtempSync(path.join(tmpdir(), "emfolio-pages-"));
  try {
    const file = path.join(folder, "a.pdf");
    writeFileSync(file, pdf);
    const range = [
      ...(pages.first ? ["-f", String(pages.first)] : []),
      ...(pages.last ? ["-l", String(pages.last)] : []),
    ];
    execFileSync("pdftoppm", ["-r", String(dotsPerInch), "-gray", ...range, file, path.join(folder, "page")]);
    return readdirSync(folder)
      .filter((name) => name.endsWith(".pgm"))
      .toSorted()
      .map((name) => readPgm(readFileSync(path.join(folder, name))));
  } finally {
    rmSync(folder, { recursive: true });
  }
};
