import { writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { attachFiles } from "@/lib/documents/certificate/attach";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { sealPdf } from "@/lib/documents/seal/seal-pdf";
import { canPreflight, preflight, withoutPreflight } from "@/tests/support/preflight";
import { temporaryFolder } from "@/tests/support/temporary-folder";
import { makeKeys } from "../authenticity/sealed-sample";
import { twoSets } from "./examples";

const folder = temporaryFolder();
const at = new Date("2026-10-16T08:30:00Z");
const rendered = await renderCertificate(twoSets, { draft: false });
const latin = Buffer.from(rendered).toString("latin1");

/**
 * The preflight knows PDF/A-1b alone. Where A-3b permits what A-1b does not, or no longer asks for it, it finds these;
 * anything else is a fault of ours (ISO 19005-1:2005 against ISO 19005-3:2012).
 */
const permitted: readonly RegExp[] = [
  /^1\.4\.7 : .*EmbeddedFile/,
  /^1\.2\.9 : .*EmbeddedFile/,
  /^3\.1\.11 : .*CIDSet/,
  /^7\.11\.2 : .*part must be 1/,
];
/** Of the signature field, which has no size and so no appearance; only in a sealed document. */
const ofTheSeal = /^5\.3\.1 : /;

const unpermitted = (name: string, pdf: Uint8Array, also: readonly RegExp[] = []): readonly string[] => {
  const file = path.join(folder, name);
  writeFileSync(file, pdf);
  return preflight(file).filter((line) => ![...permitted, ...also].some((pattern) => pattern.test(line)));
};

const attached = (pdf: Uint8Array) => {
  const bytes = new TextEncoder().encode("<invented/>");
  const what = {
    mediaType: "application/xml",
    relationship: "Alternative",
    description: "Invented",
  } as const;
  return attachFiles(pdf, [{ name: "dcc.xml", bytes, ...what }], at);
};

describe("the certificate as PDF/A-3b", () => {
  it("says so, with an output intent, an identity and the language", () => {
    expect(latin).toMatch(/^%PDF-1\.7\n%[\x80-\xff]{4}/);
    expect(latin).toContain("<pdfaid:part>3</pdfaid:part>");
    expect(latin).toContain("<pdfaid:conformance>B</pdfaid:conformance>");
    expect(latin).toContain("/S /GTS_PDFA1");
    expect(latin).toMatch(/\/ID \[<[0-9a-f]{32}> <[0-9a-f]{32}>\]/);
    expect(latin).toMatch(/\/Lang \(en\)/);
  });

  it("embeds each font it uses, and has no transparency", () => {
    const fonts = [...latin.matchAll(/\/FontName \/(\S+)/g)].map(([, name]) => name);
    expect(fonts.map((name) => name?.replace(/^[A-Z]{6}\+/, "")).toSorted()).toEqual([
      "SourceSans3-Regular",
      "SourceSans3-SemiBold",
    ]);
    expect(latin.split("/FontFile2").length - 1).toBe(fonts.length);
    expect(latin).not.toMatch(/\/Helvetica|\/Times-|\/Courier/);
    expect(
      [...latin.matchAll(/\/(ca|CA) ([\d.]+)/g)].filter(([, , opacity]) => Number(opacity) !== 1),
    ).toEqual([]);
    expect(latin).not.toContain("/SMask");
  });

  it.skipIf(!canPreflight)(
    `by Debian's PDFBox preflight${canPreflight ? "" : `: ${withoutPreflight}`}`,
    async () => {
      const { seal } = await makeKeys();
      const withFiles = await attached(rendered);
      const sealed = await sealPdf(withFiles, seal, {
        at,
        timestamp: null,
        reason: "Released",
        location: "Sample",
      });
      expect(unpermitted("plain.pdf", rendered)).toEqual([]);
      expect(unpermitted("attached.pdf", withFiles)).toEqual([]);
      expect(unpermitted("sealed.pdf", sealed, [ofTheSeal])).toEqual([]);
    },
  );

  it.skipIf(!canPreflight)(
    `by the same preflight, which sees a fault${canPreflight ? "" : `: ${withoutPreflight}`}`,
    () => {
      const spoilt = Buffer.from(latin.replace("/S /GTS_PDFA1", "/S /GTS_PDFX1"), "latin1");
      expect(unpermitted("spoilt.pdf", spoilt)).not.toEqual([]);
    },
  );
});
