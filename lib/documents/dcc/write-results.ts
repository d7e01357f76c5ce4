import type { CertificateContent, CertificateRow } from "@/lib/domain/certificate/content";
import { own } from "@/lib/domain/dcc/terms";
import type { MeasuredSet } from "./measured-set";
import { inLargerUnit, plainNumber } from "./plain-number";
import { column, type Expanded, kelvin, label, quantity, temperatures, volt, wordColumn } from "./quantities";
import { caption, composed, nameOf, rich, type Voice } from "./voice";
import { conformityColumns, conformityOf, isStated } from "./write-conformity";
import { element, elementOf, type Xml } from "./xml";

type Rows = readonly CertificateRow[];

/** Approximately 95 %, as the uncertainty statement says of contents that state no figure of their own. */
const usualProbability = "0.95";

const kelvins = (typeset: string): string => plainNumber(typeset);
const volts = (typeset: string): string => inLargerUnit(plainNumber(typeset), 6);

const expanded = (rows: Rows, values: readonly string[]): Expanded => ({
  values,
  factors: rows.map(({ coverageFactor }) => plainNumber(coverageFactor)),
  probabilities: rows.map(({ coverageProbability }) => coverageProbability ?? usualProbability),
});

const inMicrovolt = (rows: Rows): Expanded =>
  expanded(
    rows,
    rows.map((row) => volts(row.expandedMicrovolt)),
  );
const inCelsius = (rows: Rows): Expanded =>
  expanded(
    rows,
    rows.map((row) => kelvins(row.expandedCelsius)),
  );

/** 7.8.2.1 p */
const external = (voice: Voice, content: CertificateContent, rows: Rows): Xml | null =>
  rows.some(({ isExternal }) => isExternal)
    ? element(
        "dcc:metaData",
        [
          nameOf(caption(voice, "external")),
          rich("dcc:declaration", [voice.contents(content.externalResults)]),
          element("dcc:data", [
            wordColumn(
              own("source"),
              caption(voice, "sourceColumn"),
              rows.map(({ isExternal }) => (isExternal ? "external" : "own")),
            ),
          ]),
        ],
        { refType: own("source") },
      )
    : null;

const setpoints = (voice: Voice, rows: Rows): Xml =>
  quantity(
    `basic_calibrationValue ${own("setpoint")}`,
    caption(voice, "setpoint"),
    temperatures(
      rows.map((row) => row.nominalCelsius),
      rows.map((row) => label(row.setpoint)),
    ),
    { description: rich("dcc:description", [caption(voice, "setpointLabels")]) },
  );

const errors = (voice: Voice, rows: Rows, metaData: readonly (Xml | null)[]): Xml =>
  quantity(
    "basic_measurementError",
    caption(voice, "error"),
    column(
      rows.map((row) => kelvins(row.errorCelsius)),
      kelvin,
      { expanded: inCelsius(rows) },
    ),
    { metaData },
  );

type Typeset = (row: CertificateRow) => string;

const references = (voice: Voice, rows: Rows): Xml =>
  quantity(
    "basic_referenceValue",
    caption(voice, "reference"),
    temperatures(rows.map((row) => row.referenceCelsius)),
  );

const emfs = (voice: Voice, rows: Rows, refType: string, word: "emf" | "emfDeviation", of: Typeset): Xml =>
  quantity(
    refType,
    caption(voice, word),
    column(
      rows.map((row) => volts(of(row))),
      volt,
      { expanded: inMicrovolt(rows) },
    ),
  );

const corrections = (voice: Voice, rows: Rows): Xml =>
  quantity(
    own("correction"),
    caption(voice, "correction"),
    column(
      rows.map((row) => kelvins(row.correctionCelsius)),
      kelvin,
      { expanded: inCelsius(rows) },
    ),
  );

const scopes = (voice: Voice, rows: Rows): readonly Xml[] =>
  rows.every(({ scope }) => scope !== undefined)
    ? [
        wordColumn(
          own("scope"),
          caption(voice, "scopeColumn"),
          rows.map(({ scope }) => scope ?? ""),
        ),
      ]
    : [];

const mainTable = (voice: Voice, content: CertificateContent, rows: Rows): Xml =>
  element(
    "dcc:list",
    [
      setpoints(voice, rows),
      references(voice, rows),
      emfs(voice, rows, `basic_measuredValue ${own("emf")}`, "emf", (row) => row.emfMicrovolt),
      emfs(voice, rows, own("emfDeviation"), "emfDeviation", (row) => row.deviationMicrovolt),
      errors(voice, rows, [
        rows.every(isStated) ? conformityOf(voice, rows) : null,
        external(voice, content, rows),
      ]),
      corrections(voice, rows),
      ...(content.conformity === null ? [] : conformityColumns(voice, rows)),
      ...scopes(voice, rows),
    ],
    { refType: "gp_table1" },
  );

/** Where some rows bear no statement, the others stand once more by themselves: a list of words has no gaps. */
const statedTable = (voice: Voice, rows: Rows): Xml | null => {
  const some = rows.filter(isStated);
  return some.length === 0 || some.length === rows.length
    ? null
    : element(
        "dcc:list",
        [
          nameOf(caption(voice, "conformity")),
          setpoints(voice, some),
          errors(voice, some, [conformityOf(voice, some)]),
        ],
        { refType: "basic_conformity" },
      );
};

const without = (voice: Voice, rows: Rows): readonly (readonly Xml[])[] =>
  rows
    .filter(({ state }) => state !== "measured")
    .map((row) =>
      composed(
        voice,
        (say, word) =>
          `${word("noResult")}: ${row.setpoint}, ${word(row.state === "invalid" ? "invalid" : "notReached")}${row.remark === "" ? "" : `: ${say(row.remark)}`}`,
      ),
    );

const remarks = (voice: Voice, rows: Rows): readonly (readonly Xml[])[] =>
  rows
    .filter(({ state, remark }) => state === "measured" && remark !== "")
    .map((row) => composed(voice, (say) => `${row.setpoint}: ${say(row.remark)}`));

/** 7.8.2.1 m: the rows measured as columns side by side; those that were not are said in words, never as numbers. */
export const results = (voice: Voice, content: CertificateContent, { rows }: MeasuredSet): Xml => {
  const measured = rows.filter(({ state }) => state === "measured");
  const told = [...remarks(voice, rows), ...without(voice, rows)];
  return element(
    "dcc:result",
    [
      nameOf(caption(voice, "results")),
      measured.length > 0 ? rich("dcc:description", told) : null,
      elementOf(
        "dcc:data",
        measured.length > 0
          ? [mainTable(voice, content, measured), statedTable(voice, measured)]
          : [rich("dcc:text", told)],
      ),
    ],
    { refType: "gp_measuringResult1" },
  );
};
