import type { CertificateRow } from "@/lib/domain/certificate/content";
import { own } from "@/lib/domain/dcc/terms";
import { plainNumber } from "./plain-number";
import { column, kelvin, quantity, wordColumn } from "./quantities";
import { caption, nameOf, type Voice } from "./voice";
import type { Word } from "./words";
import { element, elementOf, type Xml } from "./xml";

/** The four words of the DCC; for the other states it has none, and those rows bear no statement. */
const stated: Readonly<Partial<Record<CertificateRow["conformity"]["state"], string>>> = {
  pass: "pass",
  "conditional-pass": "conditionalPass",
  "conditional-fail": "conditionalFail",
  fail: "fail",
};

export const isStated = (row: CertificateRow): boolean => stated[row.conformity.state] !== undefined;

/** "± 4.0": both limits lie as far from zero. */
const half = (tolerance: string): string => plainNumber(tolerance.replace(/^±\s*/, ""));
const negative = (plain: string): string => (plain.startsWith("-") ? plain.slice(1) : `-${plain}`);

const limit = (voice: Voice, refType: string, word: Word, values: readonly string[]): Xml =>
  quantity(refType, caption(voice, word), column(values, kelvin));

const both = (
  voice: Voice,
  values: readonly string[] | null,
  lower: readonly [string, Word],
  upper: readonly [string, Word],
): readonly Xml[] =>
  values
    ? [limit(voice, lower[0], lower[1], values.map(negative)), limit(voice, upper[0], upper[1], values)]
    : [];

const allOf = (values: readonly (string | undefined)[]): readonly string[] | null => {
  const known = values.filter((value) => value !== undefined && value !== "");
  return known.length === values.length ? (known as readonly string[]) : null;
};

/** 7.8.6 for rows that all bear a statement: the word, and the limits it was decided by. */
export const conformityOf = (voice: Voice, rows: readonly CertificateRow[]): Xml =>
  element(
    "dcc:metaData",
    [
      nameOf(caption(voice, "conformity")),
      element("dcc:conformityXMLList", rows.map((row) => stated[row.conformity.state] ?? "").join(" ")),
      elementOf("dcc:data", [
        ...both(
          voice,
          allOf(rows.map(({ conformity }) => conformity.acceptance && half(conformity.acceptance))),
          ["basic_acceptanceLimitLower", "lower"],
          ["basic_acceptanceLimitUpper", "upper"],
        ),
        ...both(
          voice,
          allOf(rows.map(({ conformity }) => conformity.tolerance && half(conformity.tolerance))),
          ["basic_toleranceLimitLower", "toleranceLower"],
          ["basic_toleranceLimitUpper", "toleranceUpper"],
        ),
      ]),
    ],
    { refType: "basic_conformity" },
  );

/** Every row's state in our own words, those without a statement too. */
export const conformityColumns = (voice: Voice, rows: readonly CertificateRow[]): readonly Xml[] => [
  wordColumn(
    own("conformityState"),
    caption(voice, "conformityColumn"),
    rows.map(({ conformity }) => conformity.state),
  ),
  ...(rows.some(({ conformity }) => conformity.probability !== "")
    ? [
        wordColumn(
          own("conformityProbability"),
          caption(voice, "conformityProbability"),
          rows.map(({ conformity }) => conformity.probability.replace(/\s+/g, "") || "not-stated"),
        ),
      ]
    : []),
];
