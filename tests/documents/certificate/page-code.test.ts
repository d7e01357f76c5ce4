import jsQR from "jsqr";
import { describe, expect, it } from "vitest";
import { sha256 } from "@/lib/data/sha256";
import { codeSide, codeText, demandReadable } from "@/lib/documents/certificate/page-code";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import type { GreyImage } from "@/tests/support/grey-image";
import { canRasterise, rasterise, withoutRasteriser } from "@/tests/support/rasterise";
import { amendment, authenticity, short } from "./examples";

const dotsPerInch = 200;
const dots = (points: number): number => Math.round((points * dotsPerInch) / 72);

/** The field at the foot of the page's right side, as a camera would see it. */
const fieldOf = ({ width, pixels }: GreyImage): Uint8ClampedArray => {
  const [left, top, side] = [dots(595.28 - 46) - dots(codeSide), dots(766), dots(codeSide + 4)];
  const colours = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let row = 0; row < side; row += 1)
    for (let column = 0; column < side; column += 1) {
      const grey = pixels[(top + row) * width + left + column] ?? 255;
      colours.set([grey, grey, grey], (row * side + column) * 4);
    }
  return colours;
};

const read = (page: GreyImage): string | undefined => {
  const side = dots(codeSide + 4);
  return jsQR(fieldOf(page), side, side)?.data;
};

const left = canRasterise ? "" : `: ${withoutRasteriser}`;
/** Of the longest public address that is taken. */
const longest = {
  ...short,
  authenticity: {
    address: authenticity.address.replace("harrowvale.example", `${"a".repeat(48)}.harrowvale.example`),
  },
};

describe("the code on each page", () => {
  it.skipIf(!canRasterise).each([
    ["a plain certificate", short],
    ["an amendment", amendment],
    ["one of a long address", longest],
  ])(`of %s, printed, reads as the address with the content's hash after "#"${left}`, async (_, content) => {
    const hash = Buffer.from(contentHash(content, sha256)).toString("base64url");
    const pages = rasterise(await renderCertificate(content, { draft: false }), dotsPerInch);
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(read(page)).toBe(`${content.authenticity?.address}#${hash}`);
  });

  it.skipIf(!canRasterise)(`is not on a draft, nor where the content names no address${left}`, async () => {
    const { authenticity: _, ...without } = short;
    const [draft] = rasterise(await renderCertificate(short, { draft: true }), dotsPerInch, { last: 1 });
    const [plain] = rasterise(await renderCertificate(without, { draft: false }), dotsPerInch, { last: 1 });
    for (const page of [draft, plain]) {
      if (!page) throw new Error("no page was drawn");
      expect(read(page)).toBeUndefined();
    }
  });

  it("is 20 mm wide and has the hash where no server sees it", () => {
    expect((codeSide * 25.4) / 72).toBeCloseTo(20, 10);
    const url = new URL(codeText(authenticity.address, "0f".repeat(32)));
    expect(url.hash).toBe(`#${Buffer.from("0f".repeat(32), "hex").toString("base64url")}`);
    expect(`${url.pathname}${url.search}`).not.toContain(url.hash.slice(1));
  });

  it("is refused before rendering where the address is too long to be read from it", async () => {
    const address = `https://${"a-long-name.".repeat(12)}example/authenticity/x`;
    expect(() => demandReadable(codeText(address, "0f".repeat(32)))).toThrow("too long");
    await expect(
      renderCertificate({ ...short, authenticity: { address } }, { draft: false }),
    ).rejects.toThrow("shorter public address");
  });
});
