import { describe, expect, it } from "vitest";
import type { BundleMember, CertificateBundle } from "@/lib/domain/certificate/bundle";
import { catalogue, catalogueSha256 } from "@/lib/domain/certificate/catalogue/catalogue";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import { howWritten } from "@/lib/domain/certificate/how-written";
import { reviewedForm } from "@/lib/domain/certificate/reviewed-form";
import { performerSignedOff } from "@/lib/domain/certificate/texts";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "../../support/certificate-parts";

/* All of it is invented. */

const anneal = { celsius: 1100, hours: 2, manner: "in a tube furnace in air", performedOn: "2026-03-03" };
const issue = {
  number: "C-2026-0001",
  issuedOn: "2026-03-05",
  signatory: { name: "Sam Signer", role: "Signatory" },
  exception: "",
};
const member = (
  kind: BundleMember["kind"],
  change: Parameters<typeof inventedParts>[0] = {},
): BundleMember => ({
  kind,
  parts: {
    ...inventedParts({
      anneals: [anneal],
      hasOtherSet: true,
      build: { isUsed: true, usedHours: 400 },
      ...change,
    }),
    set: kind,
  },
  sensorId: "s",
  customerId: "c",
  runId: `run ${kind}`,
  evaluationId: `evaluation ${kind}`,
});
const bundle = (asks: Partial<CertificateBundle["asks"]> = {}): CertificateBundle => {
  const members = [member("as-received"), member("after-anneal")];
  return {
    members,
    filedUnder: members[1] as BundleMember,
    repeats: ["T-000123: Measured twice, and so on."],
    earlierCounts: [],
    findings: [],
    asks: { budget: true, evidence: true, ...asks },
    performerIds: [],
  };
};

const strings = (value: unknown): string[] => {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(strings);
};
const withoutLanguages = ({ translations: _, catalogue: __, ...content }: CertificateContent) => content;

describe("two languages in one content", () => {
  const english = demand(composeBundle(bundle(), issue));
  const both = demand(composeBundle(bundle({ language: "en-de" }), issue));
  const german = both.translations?.[0]?.texts ?? {};

  it("say in English what English alone says, to the byte", () => {
    expect(withoutLanguages(both)).toEqual(withoutLanguages(english));
    expect(english.translations).toBeUndefined();
  });

  it("name the catalogue and the languages, the leading one first", () => {
    const of = { version: catalogue.version, sha256: catalogueSha256 };
    expect(english.catalogue).toEqual({ ...of, languages: ["en"] });
    expect(both.catalogue).toEqual({ ...of, languages: ["en", "de"] });
  });

  it("translate every sentence: what has none is a name, a figure or a date", () => {
    const sentence = /[a-z]{3,} [a-z]{2,} [a-z]{2,}/;
    const given = new Set(["mineral insulated, 3 mm", "Block of six"]);
    const left = strings(withoutLanguages(both)).filter(
      (text) => sentence.test(text) && !(text in german) && !given.has(text),
    );
    expect(left).toEqual([]);
    expect(Object.keys(german).length).toBeGreaterThan(40);
  });

  it("translate nothing that is not said", () => {
    const said = new Set(strings(withoutLanguages(both)));
    expect(Object.keys(german).filter((text) => !said.has(text))).toEqual([]);
  });

  it("keep every figure of a sentence as it is: the leading language decides the decimal sign", () => {
    const figures = (text: string) =>
      [...text.matchAll(/\d+(?:\.\d+)?/g)].map(([figure]) => figure).toSorted();
    for (const [text, translated] of Object.entries(german)) {
      if (translated.startsWith("Wortlaut")) continue;
      expect(figures(translated), text).toEqual(figures(text));
      expect(translated, text).not.toMatch(/\d,\d/);
    }
  });

  it("speak German metrology", () => {
    for (const [text, word] of [
      [both.title, "Kalibrierschein"],
      [both.uncertaintyStatement, "Erweiterungsfaktor"],
      [both.conformity?.rule, "Annahmegrenze"],
      [both.traceabilityStatement, "zurückgeführt"],
      [both.conditions[3], "Vergleichsstelle"],
      [both.budgets?.[0]?.lines[0]?.label, "Inhomogenität des Prüflings"],
      [both.authorisedBy.role, "Zeichnungsberechtigt"],
    ] as const)
      expect(german[text ?? ""], text).toContain(word);
  });

  it("mark what people wrote", () => {
    const content = demand(
      composeCertificate(
        inventedParts({
          intake: { ...inventedParts().intake, condition: "deviates", conditionNote: "bent at the tip" },
          disclaimers: ["The customer insisted."],
        }),
        null,
        howWritten({ language: "en-de" }),
      ),
    );
    const texts = content.translations?.[0]?.texts ?? {};
    expect(texts["Deviates: bent at the tip"]).toContain("„bent at the tip“ (Wortlaut wie angegeben)");
    expect(texts["The customer insisted."]).toBe("Wortlaut wie angegeben, nicht übersetzt.");
  });

  it("give the reviewed form again", () => {
    const reviewed = demand(composeBundle(bundle({ language: "en-de" }), null));
    const signed = demand(
      composeBundle(bundle({ language: "en-de" }), {
        ...issue,
        exception: performerSignedOff,
        authenticity: { address: "https://lab.example.test/authenticity/abc" },
        log: { sequence: 7, hash: "ab".repeat(32) },
      }),
    );
    expect(signed.log?.sequence).toBe(7);
    expect(signed.translations?.[0]?.texts[performerSignedOff]).toContain("zweite Durchsicht");
    expect(canonicalContent(reviewedForm(signed))).toBe(canonicalContent(reviewed));
  });

  it("are refused where the catalogue lacks a text, by its key", () => {
    const how = howWritten({ language: "en-de" });
    const lacking = {
      ...catalogue,
      texts: { ...catalogue.texts, "sets.each": { en: catalogue.texts["sets.each"].en } },
    };
    const refused = composeBundle(bundle(), issue, {
      ...how,
      wording: { catalogue: lacking, further: ["de"] },
    });
    expect(refused).toMatchObject({
      ok: false,
      refusal: {
        code: "rule",
        message: expect.stringContaining("sets.each (de)"),
        grounds: { language: "certificate-text-missing" },
      },
    });
    const alone = composeBundle(bundle(), issue, { ...how, wording: { catalogue: lacking, further: [] } });
    expect(alone.ok).toBe(true);
  });
});
