import type { CertificateContent } from "@/lib/domain/certificate/content";
import { own } from "@/lib/domain/dcc/terms";
import { plainNumber } from "./plain-number";
import { column, kelvin, label, quantity, single, wordColumn, writtenTemperatures } from "./quantities";
import { caption, composed, nameOf, rich, type Voice } from "./voice";
import type { Word } from "./words";
import { conditionsOfDerived } from "./write-conditions";
import { element, type Xml } from "./xml";

const setpoints = (voice: Voice, rows: readonly { readonly setpoint: string }[]): Xml =>
  quantity(
    `basic_calibrationValue ${own("setpoint")}`,
    caption(voice, "setpoint"),
    writtenTemperatures(rows.map(({ setpoint }) => setpoint)),
  );

const changes = (voice: Voice, content: CertificateContent): readonly Xml[] =>
  (content.changes ?? []).map(({ tag, rows, statement }) =>
    element(
      "dcc:result",
      [
        nameOf(composed(voice, (_, word) => `${word("changeByAnnealing")}, ${tag}`)),
        rich("dcc:description", [voice.contents(statement)]),
        element("dcc:data", [
          element("dcc:list", [
            setpoints(voice, rows),
            quantity(
              own("change"),
              caption(voice, "changeByAnnealing"),
              column(
                rows.map((row) => plainNumber(row.changeCelsius)),
                kelvin,
                {
                  expanded: {
                    values: rows.map((row) => plainNumber(row.expandedCelsius)),
                    // As the statement beside it says: k = 2.
                    factors: rows.map(() => "2"),
                    probabilities: rows.map(() => "0.95"),
                  },
                },
              ),
            ),
          ]),
        ]),
      ],
      { refType: own("change") },
    ),
  );

type LotRow = NonNullable<CertificateContent["lot"]>["rows"][number];

const lotColumns: readonly (readonly [Word, keyof LotRow])[] = [
  ["average", "averageErrorCelsius"],
  ["smallest", "smallestErrorCelsius"],
  ["largest", "largestErrorCelsius"],
  ["halfRange", "halfRangeCelsius"],
];

const lotTable = (voice: Voice, rows: readonly LotRow[]): Xml =>
  element("dcc:list", [
    setpoints(voice, rows),
    quantity(
      own("lot"),
      caption(voice, "items"),
      column(
        rows.map(({ items }) => String(items)),
        "\\one",
      ),
    ),
    ...lotColumns.map(([word, key]) =>
      quantity(
        own("lot"),
        caption(voice, word),
        column(
          rows.map((row) => plainNumber(String(row[key]))),
          kelvin,
        ),
      ),
    ),
  ]);

type Roll = NonNullable<CertificateContent["rolls"]>["of"][number];

const rollColumns: readonly (readonly [Word, keyof Roll["rows"][number]["celsius"]])[] = [
  ["firstEnd", "firstEnd"],
  ["secondEnd", "secondEnd"],
  ["average", "average"],
  ["halfRange", "halfRange"],
];

const rolls = (voice: Voice, { rolls: of }: CertificateContent): readonly Xml[] =>
  (of?.of ?? []).map(({ roll, firstEnd, secondEnd, rows }) =>
    element(
      "dcc:result",
      [
        nameOf(composed(voice, (say) => `${say(roll)}: ${firstEnd.join(", ")} / ${secondEnd.join(", ")}`)),
        rich("dcc:description", [voice.contents(of?.statement ?? "")]),
        element("dcc:data", [
          element("dcc:list", [
            setpoints(voice, rows),
            ...rollColumns.map(([word, key]) =>
              quantity(
                own("lot"),
                caption(voice, word),
                column(
                  rows.map(({ celsius }) => plainNumber(celsius[key])),
                  kelvin,
                ),
              ),
            ),
          ]),
        ]),
      ],
      { refType: own("lot") },
    ),
  );

const lot = (voice: Voice, { lot: summary }: CertificateContent): readonly Xml[] =>
  summary
    ? [
        element(
          "dcc:result",
          [
            nameOf(caption(voice, "lot")),
            rich("dcc:description", [voice.contents(summary.statement)]),
            element("dcc:data", [lotTable(voice, summary.rows)]),
          ],
          { refType: own("lot") },
        ),
      ]
    : [];

type Budget = NonNullable<CertificateContent["budgets"]>[number];

/**
 * The lines as columns side by side, not an element each: a lot of forty sensors has some thousands of them. Their names
 * are words without blanks, one column for each language.
 */
const budgetTable = (voice: Voice, { lines, combinedCelsius }: Budget): Xml =>
  element("dcc:list", [
    ...voice.languages.map((language) =>
      wordColumn(
        own("budgetLine"),
        composed(voice, (_, word) => `${word("line")} (${language})`),
        lines.map((line) => label(voice.say(language)(line.label))),
      ),
    ),
    quantity(
      own("budget"),
      caption(voice, "standardUncertainty"),
      column(
        lines.map((line) => plainNumber(line.effectCelsius)),
        kelvin,
      ),
    ),
    wordColumn(
      own("distribution"),
      caption(voice, "distribution"),
      lines.map((line) => label(voice.say(voice.languages[0] ?? "en")(line.distribution))),
    ),
    wordColumn(
      own("share"),
      caption(voice, "share"),
      lines.map((line) => line.share.replace(/\s+/g, "")),
    ),
    quantity(
      `basic_uncertainty ${own("budget")}`,
      caption(voice, "combined"),
      single(plainNumber(combinedCelsius), kelvin),
    ),
  ]);

const budgets = (voice: Voice, content: CertificateContent): readonly Xml[] =>
  (content.budgets ?? []).map((budget) =>
    element(
      "dcc:result",
      [
        nameOf(composed(voice, (_, word) => `${word("budget")}, ${budget.tag}, ${budget.setpoint}`)),
        rich("dcc:description", [
          composed(
            voice,
            (_, word) =>
              `k = ${budget.coverageFactor}, ${word("degreesOfFreedom")} ${budget.degreesOfFreedom}`,
          ),
        ]),
        element("dcc:data", [budgetTable(voice, budget)]),
      ],
      { refType: own("budget") },
    ),
  );

/** What follows from several results, each kind as a measurement result of its own. */
export const derived = (voice: Voice, content: CertificateContent): readonly Xml[] =>
  (
    [
      ["changeByAnnealing", changes(voice, content)],
      ["lot", [...lot(voice, content), ...rolls(voice, content)]],
      ["budget", budgets(voice, content)],
    ] as const
  )
    .filter(([, results]) => results.length > 0)
    .map(([word, results]) =>
      element("dcc:measurementResult", [
        nameOf(caption(voice, word)),
        conditionsOfDerived(voice),
        element("dcc:results", results),
      ]),
    );
