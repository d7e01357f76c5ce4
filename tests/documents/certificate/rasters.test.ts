import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import {
  type GreyImage,
  readGreyPng,
  shareOfDifferingPixels,
  writeGreyPng,
} from "@/tests/support/grey-image";
import { canRasterise, rasterise, withoutRasteriser } from "@/tests/support/rasterise";
import { amendment, bilingual, short, simplified, twoSets } from "./examples";

const folder = path.join(import.meta.dirname, "rasters");
const dotsPerInch = 50;
/** What another version of the rasteriser may smooth otherwise; a row that moved by a line is some 3 % of a page. */
const tolerated = 0.01;

/** Drawn anew after a change of layout that was looked at: EMFOLIO_DRAW_RASTERS=yes npm test -- vitest rasters */
const isDrawnAnew = process.env.EMFOLIO_DRAW_RASTERS === "yes";

const cases: readonly (readonly [string, CertificateContent, number])[] = [
  ["short", short, 1],
  ["simplified", simplified, 1],
  ["amendment", amendment, 2],
  ["bilingual", bilingual, 1],
  ["figures", twoSets, 3],
  ["function", twoSets, 4],
];

const rendered = new Map<CertificateContent, Promise<Uint8Array>>();

const drawn = async (content: CertificateContent, page: number): Promise<GreyImage> => {
  const rendering = rendered.get(content) ?? renderCertificate(content, { draft: false });
  rendered.set(content, rendering);
  const pdf = await rendering;
  const [image] = rasterise(pdf, dotsPerInch, { first: page, last: page });
  if (!image) throw new Error(`there is no page ${page}`);
  return image;
};

const shifted = (image: GreyImage, rows: number): GreyImage => {
  const pixels = new Uint8Array(image.pixels.length).fill(255);
  pixels.set(image.pixels.subarray(0, pixels.length - rows * image.width), rows * image.width);
  return { ...image, pixels };
};

describe.skipIf(!canRasterise)(`pages as they print${canRasterise ? "" : `: ${withoutRasteriser}`}`, () => {
  it.each(cases)("%s is as it was when it was looked at", async (name, content, page) => {
    const file = path.join(folder, `${name}-${page}.png`);
    const image = await drawn(content, page);
    if (isDrawnAnew) writeFileSync(file, writeGreyPng(image));
    expect(existsSync(file)).toBe(true);
    const stored = readGreyPng(readFileSync(file));
    expect(shareOfDifferingPixels(image, stored)).toBeLessThan(tolerated);
    // The same page two dots lower, 1 mm, would be noticed.
    expect(shareOfDifferingPixels(shifted(image, 2), stored)).toBeGreaterThan(tolerated);
  });
});
