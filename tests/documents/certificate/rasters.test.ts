import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import {
  type GreyImage,
  readGreyPng,
  shareOfDifferingPixels,
  strongestDifference,
  writeGreyPng,
} from "@/tests/support/grey-image";
import { canRasterise, rasterise, rasteriserVersion, withoutRasteriser } from "@/tests/support/rasterise";
import { amendment, bilingual, fahrenheit, lotOfTwelve, short, simplified, twoSets } from "./examples";

const folder = path.join(import.meta.dirname, "rasters");
const dotsPerInch = 110;
/** The version that drew the stored pages: by the same, each digit is compared; by another, the page as a whole. */
const drawnBy = path.join(folder, "drawn-by.txt");
/** Digits that look most alike, 3 and 8 or 5 and 6, came to 8; the same page again comes to 0. */
const toleratedOfBlock = 4;
/** What another version may place and smooth otherwise; a row that moved by a line is some 3 % of a page. */
const toleratedOfPage = 0.01;

/** Drawn anew after a change of layout that was looked at: EMFOLIO_DRAW_RASTERS=yes npm test -- vitest rasters */
const isDrawnAnew = process.env.EMFOLIO_DRAW_RASTERS === "yes";

/** Enough for the tables of a lot; more would only take longer. */
const lotOfThree = { ...lotOfTwelve, sets: lotOfTwelve.sets?.slice(0, 3) };

const cases: readonly (readonly [string, CertificateContent, number])[] = [
  ["short", short, 1],
  ["simplified", simplified, 1],
  ["amendment", amendment, 2],
  ["bilingual", bilingual, 1],
  ["figures", twoSets, 3],
  ["function", twoSets, 4],
  ["fahrenheit", fahrenheit, 1],
  ["lot", lotOfThree, 1],
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

/** Without its foot: the content's hash and code stand there, which change with whatever else does. */
const withoutFoot = (image: GreyImage): GreyImage => {
  const height = Math.floor(image.height * 0.9);
  return { ...image, height, pixels: image.pixels.subarray(0, height * image.width) };
};

const isSame = !canRasterise || isDrawnAnew || readFileSync(drawnBy, "utf8").trim() === rasteriserVersion;
const how = isSame ? "" : `, as a whole: drawn by another version than ${rasteriserVersion}`;

describe.skipIf(!canRasterise)(`pages as they print${canRasterise ? how : `: ${withoutRasteriser}`}`, () => {
  it.each(cases)("%s is as it was when it was looked at", async (name, content, page) => {
    const file = path.join(folder, `${name}-${page}.png`);
    const image = await drawn(content, page);
    if (isDrawnAnew) {
      writeFileSync(file, writeGreyPng(image));
      writeFileSync(drawnBy, `${rasteriserVersion}\n`);
    }
    expect(existsSync(file)).toBe(true);
    const stored = readGreyPng(readFileSync(file));
    if (isSame) expect(strongestDifference(image, stored)).toBeLessThan(toleratedOfBlock);
    expect(shareOfDifferingPixels(image, stored)).toBeLessThan(toleratedOfPage);
    // The same page two dots lower, half a millimetre, would be noticed.
    expect(shareOfDifferingPixels(shifted(image, 2), stored)).toBeGreaterThan(toleratedOfPage);
  });

  it("are others with one digit of one result changed", async () => {
    const page = withoutFoot(await drawn(short, 1));
    for (const changed of [{ errorCelsius: "0.6" }, { emfMicrovolt: "24 788" }]) {
      const rows = short.rows.map((row, at) =>
        at === 1 ? { ...row, ...changed } : row,
      ) as typeof short.rows;
      const other = withoutFoot(await drawn({ ...short, rows }, 1));
      expect(strongestDifference(other, page)).toBeGreaterThan(toleratedOfBlock);
    }
  });
});
