import type { Draw } from "@/tests/files/dcc/draws";

/** A change after which the file says something else than it must; `what` names it. */
export type OwnMutation = (xml: string, draw: Draw) => { readonly xml: string; readonly what: string };

type Span = { readonly start: number; readonly end: number; readonly text: string };

const spans = (xml: string, pattern: RegExp): readonly Span[] =>
  [...xml.matchAll(new RegExp(pattern, "g"))].map((match) => ({
    start: match.index,
    end: match.index + match[0].length,
    text: match[0],
  }));

const put = (xml: string, { start, end }: Span, text: string): string =>
  xml.slice(0, start) + text + xml.slice(end);

const without =
  (pattern: RegExp): OwnMutation =>
  (xml, draw) => {
    const span = draw.of(spans(xml, pattern));
    return { xml: put(xml, span, ""), what: `without ${span.text.slice(0, 60)}` };
  };

const quantityOf = (xml: string, refType: string, draw: Draw): Span =>
  draw.of(spans(xml, new RegExp(`<dcc:quantity refType="[^"]*${refType}[^"]*">[\\s\\S]*?</dcc:quantity>`)));

/** Changes one member of the first list of this name within a quantity. */
const member = (
  xml: string,
  draw: Draw,
  [refType, list]: readonly [string, string],
  change: (written: string) => string,
): { readonly xml: string; readonly what: string } => {
  const quantity = quantityOf(xml, refType, draw);
  const [found] = spans(quantity.text, new RegExp(`<si:${list}>[^<]*</si:${list}>`));
  if (!found) throw new Error(`${refType} has no ${list}.`);
  const all = found.text.replace(/<[^>]*>/g, "").split(" ");
  const at = draw.below(all.length);
  const changed = all.map((written, index) => (index === at ? change(written) : written)).join(" ");
  return {
    xml: put(xml, quantity, put(quantity.text, found, `<si:${list}>${changed}</si:${list}>`)),
    what: `${refType} ${list} ${at + 1}: ${all[at]} → ${change(all[at] ?? "")}`,
  };
};

const up = (written: string): string =>
  written.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1 + (Number(digit) === 9 ? 1 : 0)) % 10));

/** Faults of sense: nine kinds that any schema lets pass. */
export const ownMutations: Readonly<Record<string, OwnMutation>> = {
  "a digit of a correction differs from the error's": (xml, draw) =>
    member(xml, draw, ["emfolio_correction", "valueXMLList"], up),
  "kelvin and Celsius of a temperature differ": (xml, draw) =>
    member(
      xml,
      draw,
      [draw.of(["basic_referenceValue", "basic_calibrationValue"]), "valueXMLList"],
      (written) => written.replace(/^\d/, (digit) => String((Number(digit) % 9) + 1)),
    ),
  "a U that is nothing": (xml, draw) =>
    member(
      xml,
      draw,
      [draw.of(["emfolio_emf\\b", "emfolio_emfDeviation", "emfolio_correction"]), "valueExpandedMUXMLList"],
      () => draw.of(["0", "0.0", "NaN"]),
    ),
  "a value left open": (xml, draw) =>
    member(
      xml,
      draw,
      [draw.of(["emfolio_emf\\b", "emfolio_emfDeviation", "emfolio_correction"]), "valueXMLList"],
      () => "NaN",
    ),
  "an emf in another unit than it says": (xml, draw) =>
    member(xml, draw, ["emfolio_emf\\b", "valueXMLList"], (written) => `${Number(written) * 1e6 + 100_000}`),
  "a limit on one side that is not the other's": (xml, draw) =>
    member(
      xml,
      draw,
      [draw.of(["basic_acceptanceLimitLower", "basic_toleranceLimitUpper"]), "valueXMLList"],
      up,
    ),
  "a statement of a clause is gone": (xml, draw) => {
    const clause = draw.of([
      "7\\.8\\.2\\.1 c",
      "7\\.8\\.2\\.1 k",
      "7\\.8\\.2\\.1 p",
      "7\\.8\\.4\\.1 d",
      "7\\.8\\.4\\.1 c",
      "7\\.8\\.6",
    ]);
    return without(
      new RegExp(
        `<dcc:statement [^>]*>(?:(?!</dcc:statement>)[\\s\\S])*<dcc:reference>${clause}</dcc:reference>(?:(?!</dcc:statement>)[\\s\\S])*</dcc:statement>`,
      ),
    )(xml, draw);
  },
  "something a certificate must have is gone": (xml, draw) =>
    without(
      draw.of([
        /<dcc:issueDate>[^<]*<\/dcc:issueDate>/,
        /<dcc:receiptDate>[^<]*<\/dcc:receiptDate>/,
        /<dcc:mainSigner>true<\/dcc:mainSigner>/,
        /<dcc:identification refType="emfolio_contentHash">[\s\S]*?<\/dcc:identification>/,
        /<dcc:identification refType="basic_serialNumber">[\s\S]*?<\/dcc:identification>(?=\s*<dcc:identification>)/,
        /<dcc:usedMethod refType="basic_uncertainty">[\s\S]*?<\/dcc:usedMethod>/,
        /<dcc:usedMethod>[\s\S]*?<\/dcc:usedMethod>/,
        /<dcc:influenceCondition refType="emfolio_referenceJunction">[\s\S]*?<\/dcc:influenceCondition>/,
        /<dcc:quantity refType="emfolio_emfDeviation">[\s\S]*?<\/dcc:quantity>/,
      ]),
    )(xml, draw),
  "a term that no vocabulary holds": (xml, draw) => {
    const span = draw.of(spans(xml, /refType="[^"]*"/));
    const term = draw.of(["emfolio_unknown", "lab_value", "basic", "nist_x"]);
    return {
      xml: put(xml, span, `refType="${term === "basic" ? "basicc_x" : term}"`),
      what: `${span.text} as ${term}`,
    };
  },
};
