import { describe, expect, it } from "vitest";
import { missingGlyphs } from "@/lib/documents/certificate/demand-glyphs";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { catalogue } from "@/lib/domain/certificate/catalogue/catalogue";
import { unprintableIn } from "@/lib/domain/certificate/printable/unprintable";
import { short } from "./examples";

const named = (name: string) => ({ ...short, customer: { ...short.customer, name } });

describe("the glyphs of the document's fonts", () => {
  it("are there for every sign that a certificate sets", async () => {
    const signs =
      "≤ ≥ < > ± − × · µ μ Ω ° † ‡ – — … „ “ ” ‘ ’ ₉₀ ⁻⁰¹²³⁴⁵⁶⁷⁸⁹ ν σ Δ \u2009 \u202f \u00a0 ÄÖÜäöüß éèçøåñ ŁłŠšŽžĐđ Ωδ Жя";
    expect(await missingGlyphs(named(signs))).toEqual([]);
  });

  it("are there for every text of the catalogue in each of its languages", async () => {
    expect(await missingGlyphs(named(JSON.stringify(catalogue.texts)))).toEqual([]);
  });

  it("are asked for before anything is rendered: one that is missing stops it and is named", async () => {
    expect(await missingGlyphs(named("漢字 works"))).toEqual([
      { path: "customer.name", character: "漢" },
      { path: "customer.name", character: "字" },
    ]);
    await expect(renderCertificate(named("漢字 works"), { draft: false })).rejects.toThrow(
      /no glyph for "漢" \(U\+6F22\) in customer\.name/,
    );
  });

  it("are asked for in translations too", async () => {
    const content = { ...short, translations: [{ language: "de" as const, texts: { "None made.": "→ ★" } }] };
    expect((await missingGlyphs(content)).map(({ character }) => character)).toEqual(["★"]);
  });
});

it("are those that the rules know, so that no certificate is signed that cannot be printed", async () => {
  const all = Array.from({ length: 0x20000 }, (_, point) => point).filter((at) => at < 0xd800 || at > 0xdfff);
  const text = all.map((point) => String.fromCodePoint(point)).join("");
  const missing = new Set((await missingGlyphs(named(text))).map(({ character }) => character));
  expect(new Set(unprintableIn(text))).toEqual(missing);
});
