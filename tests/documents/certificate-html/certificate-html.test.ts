import { describe, expect, it } from "vitest";
import { scientific } from "@/lib/documents/certificate/scientific";
import { certificateHtml, certificateHtmlPolicy } from "@/lib/documents/certificate-html/certificate-html";
import { escaped } from "@/lib/documents/certificate-html/html";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { changing } from "../certificate/changing";
import * as examples from "../certificate/examples";
import { sampleContent } from "../certificate/sample-content";

const contentHash = "ab".repeat(32);
const contents: readonly (readonly [string, CertificateContent])[] = [
  ["the sample", sampleContent],
  ["one item", examples.short],
  ["a simplified one", examples.simplified],
  ["an amendment", examples.amendment],
  ["an amendment that says what it changes", changing(examples.amendment)],
  ["a lot", examples.lotOfTwelve],
  ["two sets", examples.twoSets],
  ["°F", examples.fahrenheit],
  ["two languages", examples.bilingual],
  [
    "opinions and exclusions",
    {
      ...sampleContent,
      function: examples.fitted((row) => (row === 0 ? "Outside the accredited scope" : "")),
      exclusions: ["T-1: the measurement of run R-2 was set aside and is not reported: <drift>"],
      thermalHistory: ["T-1: nothing was stated of its use before it came."],
      opinions: [
        {
          text: "It may be used & watched.",
          basis: "Drift of 3 years",
          by: "Ida Invented",
          on: "2026-03-05",
        },
      ],
    },
  ],
];

/** What a reader has to find: everything but what steers the layout or is for a machine. */
const silent =
  /^(format|kind|catalogue\.languages|translations\..*\.language|form|amends\.kind|.*\.(state|scope|kind|role|route|mediaType|nominalCelsius|coverageProbability)|.*accreditationMark\..*|.*\.plot\..*)$/;
/** Where no statement is made, a row's tolerance is nobody's. */
const isStated = ({ conformity }: CertificateContent, path: string): boolean =>
  conformity !== null || !/rows\.\d+\.conformity/.test(path);

const printed = (value: unknown, path: string): readonly (readonly [string, string])[] => {
  if (typeof value === "string") return value === "" || silent.test(path) ? [] : [[path, value]];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => {
    const inner = path === "" ? key : `${path}.${key}`;
    return printed(one, inner);
  });
};

const said = (path: string, text: string): string =>
  escaped(/coefficients\.\d+\.value$/.test(path) ? scientific(text) : text);

describe("the page of a certificate", () => {
  it.each(contents)("says everything that the content of %s says", (_, content) => {
    const html = certificateHtml(content, contentHash);
    const missing = printed(content, "").filter(
      ([path, text]) => isStated(content, path) && !html.includes(said(path, text)),
    );
    expect(missing).toEqual([]);
    expect(html).toContain(contentHash);
  });

  it.each(contents)("is the same for the same content, whole, and runs nothing: %s", (_, content) => {
    const html = certificateHtml(content, contentHash);
    expect(certificateHtml(structuredClone(content), contentHash)).toBe(html);
    expect(html).toMatch(/^<!doctype html>\n<html lang="en">.*<\/html>\n$/s);
    expect(html).not.toMatch(
      /<script|<img|<link|<iframe|<form| on[a-z]+="| style="|javascript:|url\(|@import/i,
    );
    const open = [...html.matchAll(/<([a-z][a-z0-9]*)[ >]/g)].map(([, name]) => name);
    for (const name of new Set(open))
      if (name !== "meta")
        expect(html.split(`</${name}>`).length - 1, name).toBe(open.filter((one) => one === name).length);
    expect(html).toContain(escaped(certificateHtmlPolicy));
  });

  it.each(contents)("can be read without seeing it: %s", (_, content) => {
    const html = certificateHtml(content, contentHash);
    expect(html.match(/<h1>/g)).toHaveLength(1);
    for (const [table] of html.matchAll(/<table>.*?<\/table>/gs)) {
      expect(table).toMatch(/^<table><caption>.+<\/caption><thead>/s);
      expect(table).not.toMatch(/<th(?![^>]*scope="(row|col)")[ >]/);
      const columns = (table.match(/scope="col"/g) ?? []).length;
      for (const [row] of table.split("<tbody>")[1]?.matchAll(/<tr>.*?<\/tr>/gs) ?? [])
        expect((row.match(/<t[hd]/g) ?? []).length === columns || row.includes("colspan"), row).toBe(true);
    }
    for (const [svg] of html.matchAll(/<svg [^>]*>/g))
      expect(svg).toMatch(/role="img" aria-label="[^"]{20,}"/);
    const levels = [...html.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level));
    for (const [at, level] of levels.entries())
      if (at > 0) expect(level - (levels[at - 1] ?? 0)).toBeLessThan(2);
  });

  it("marks the language of what is not in the leading one", () => {
    const html = certificateHtml(examples.bilingual, contentHash);
    const [german] = examples.bilingual.translations ?? [];
    for (const [english, text] of Object.entries(german?.texts ?? {}))
      if (text !== english)
        expect(html, english).toMatch(new RegExp(`lang="de"[^<]*>[^<]*${pattern(escaped(text))}`));
    expect(certificateHtml(examples.short, contentHash)).not.toContain('lang="de"');
  });

  it("gives the hash after the sign that no server sees", () => {
    expect(certificateHtml(examples.short, contentHash)).toContain(
      `href="${examples.authenticity.address}#${contentHash}"`,
    );
  });

  it("says where the log stood, in each language, where it does", () => {
    const { log } = examples.bilingual;
    const html = certificateHtml(examples.bilingual, contentHash);
    expect(html).toContain("Protokoll bei der Unterzeichnung: Ereignis");
    expect(html).toContain(`${log?.sequence}, <code>SHA-256 ${log?.hash}</code>`);
    expect(certificateHtml(examples.short, contentHash)).not.toContain("Audit log at the signature");
  });

  it("lets nothing out of a text into the page", () => {
    const attack = `"><script>alert(1)</script><a href='javascript:0'>`;
    const html = certificateHtml(
      { ...sampleContent, customer: { ...sampleContent.customer, name: attack }, number: attack },
      contentHash,
    );
    expect(html).not.toContain("<script");
    expect(html).toContain(escaped(attack));
  });
});

function pattern(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
