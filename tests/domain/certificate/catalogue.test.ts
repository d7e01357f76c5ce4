import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import {
  canonicalCatalogue,
  catalogue,
  catalogueSha256,
  label,
  type TextKey,
} from "@/lib/domain/certificate/catalogue/catalogue";
import { say } from "@/lib/domain/certificate/catalogue/message";
import { english, settle } from "@/lib/domain/certificate/catalogue/settle";
import { FurtherLanguage } from "@/lib/domain/certificate/document-language";
import { budgetLines } from "@/lib/domain/evidence/budget-lines";
import { meanings } from "@/lib/domain/signing/meaning";

const entries = Object.entries(catalogue.texts) as [TextKey, { en: string; de?: string }][];
const places = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).toSorted();

describe("the text catalogue", () => {
  it("has the hash that contents carry; whoever changes a text raises the version", () => {
    expect(createHash("sha256").update(canonicalCatalogue(catalogue)).digest("hex")).toBe(catalogueSha256);
  });

  it.each(FurtherLanguage.options)("has every text in %s, with the same places", (language) => {
    expect(entries.length).toBeGreaterThan(250);
    for (const [key, text] of entries) {
      expect(text[language], key).toMatch(/\S/);
      // A whole line of somebody's own words: the translation says that it is one, and does not repeat it.
      if (key === "given.whole") continue;
      expect(places(text[language] ?? ""), key).toEqual(places(text.en));
    }
  });

  it("says the same thing in the same words, so that a sentence has one translation", () => {
    const seen = new Map<string, string>();
    for (const [key, { en, de = "" }] of entries) {
      if (key.startsWith("label.") || key.startsWith("given")) continue;
      expect(seen.get(en) ?? de, key).toBe(de);
      seen.set(en, de);
    }
  });

  it("keeps to true typography: no straight minus before a figure, no comma as a decimal sign", () => {
    for (const [key, { en, de = "" }] of entries)
      for (const text of [en, de]) expect(text, key).not.toMatch(/[\s(]-\d|\d,\d/);
  });

  it("names each line of the budget as the evaluation does", () => {
    for (const [key, { label: named }] of Object.entries(budgetLines))
      expect(english(say(`budget.${key as keyof typeof budgetLines}`))).toBe(named);
  });

  it("knows what a signature means, as it is signed", () => {
    expect(english(say("meaning.reviewed-and-authorised"))).toBe(meanings["reviewed-and-authorised"]);
  });

  it("gives a label in the language asked for, English unless said", () => {
    expect(label("uncertainty")).toBe("Uncertainty");
    expect(label("uncertainty", "de")).toBe("Messunsicherheit");
  });
});

describe("settling", () => {
  const without = (key: TextKey) => ({
    ...catalogue,
    texts: { ...catalogue.texts, [key]: { en: catalogue.texts[key].en } },
  });
  const draft = { title: say("title"), rows: [{ remark: say("row.in-addition") }], number: "1" };

  it("gives the English structure, and each sentence's translation beside it", () => {
    expect(settle(draft, { catalogue, further: ["de"] })).toEqual({
      ok: true,
      value: {
        value: {
          title: "Calibration certificate",
          rows: [{ remark: "Measured in addition to the order." }],
          number: "1",
        },
        translations: [
          {
            language: "de",
            texts: {
              "Calibration certificate": "Kalibrierschein",
              "Measured in addition to the order.": "Zusätzlich zum Auftrag gemessen.",
            },
          },
        ],
      },
    });
  });

  it.each(["title", "row.in-addition", "label.uncertainty"] as const)("stops where %s is missing", (key) => {
    const further = settle(draft, { catalogue: without(key), further: ["de"] });
    expect(further).toMatchObject({
      ok: false,
      refusal: {
        code: "rule",
        message: expect.stringContaining(`${key} (de)`),
        grounds: { language: "certificate-text-missing" },
      },
    });
    expect(settle(draft, { catalogue: without(key), further: [] }).ok).toBe(true);
  });

  it("marks what a person wrote, and does not translate it", () => {
    const settled = settle(
      { note: say("item.condition-deviates", { note: say("given", { text: "bent at the tip" }) }) },
      { catalogue, further: ["de"] },
    );
    expect(settled.ok && settled.value.translations[0]?.texts).toEqual({
      "Deviates: bent at the tip": "Weicht ab: „bent at the tip“ (Wortlaut wie angegeben)",
    });
  });
});
