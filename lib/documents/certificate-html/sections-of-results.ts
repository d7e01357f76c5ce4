import type { CertificateContent, CertificateRow } from "@/lib/domain/certificate/content";
import { outsideScopeSign } from "@/lib/domain/certificate/texts";
import { deviationPlot } from "@/lib/drawing/deviation-plot";
import { inLine, type Said, together } from "../certificate/words";
import { figure } from "./figure";
import { all, el, type Html } from "./html";
import { setHeading } from "./sections-of-item";
import { lines, part, type Spoken } from "./speak";
import { type Column, table } from "./table";

/** The sign of the PDF, beside what an external provider measured (7.8.2.1 p). */
const externalSign = "‡";

const setpoint = ({ setpoint: typed, scope, isExternal }: CertificateRow): string =>
  [typed, ...(scope === "outside" ? [outsideScopeSign] : []), ...(isExternal ? [externalSign] : [])].join(
    " ",
  );

const instead =
  ({ say, words }: Spoken) =>
  (row: CertificateRow): Html | null =>
    row.state === "measured"
      ? null
      : say(together(": ", words.caption(`state.${row.state}`), words.sentence(row.remark)));

const columnsOf = ({ words }: Spoken): readonly Column<CertificateRow>[] => {
  const { caption } = words;
  const number = (header: Said, unit: Said | undefined, cell: (row: CertificateRow) => string) => ({
    ...{ header, cell, isNumber: true },
    ...(unit ? { unit } : {}),
  });
  return [
    { header: caption("setpoint"), unit: caption("asOrdered"), cell: setpoint },
    number(caption("reference"), ["°C"], (row) => row.referenceCelsius),
    number(caption("emfAtSetpoint"), caption("junctionAtZero"), (row) => row.emfMicrovolt),
    number(caption("deviation"), ["µV"], (row) => row.deviationMicrovolt),
    number(["U"], ["µV"], (row) => row.expandedMicrovolt),
    number(caption("error"), ["°C"], (row) => row.errorCelsius),
    number(caption("correction"), ["°C"], (row) => row.correctionCelsius),
    number(["U"], ["°C"], (row) => row.expandedCelsius),
    number(["k"], undefined, (row) => row.coverageFactor),
  ];
};

const acceptance = ({ conformity }: CertificateRow): string =>
  conformity.acceptance === undefined ? "" : `± ${conformity.acceptance}`;

const statementColumns = ({ words, say }: Spoken): readonly Column<CertificateRow>[] => {
  const { caption } = words;
  return [
    { header: caption("setpoint"), unit: caption("asOrdered"), cell: setpoint },
    { header: caption("error"), unit: ["°C"], isNumber: true, cell: (row) => row.errorCelsius },
    { header: ["U"], unit: ["°C"], isNumber: true, cell: (row) => row.expandedCelsius },
    {
      ...{ header: caption("tolerance"), unit: ["°C"], isNumber: true },
      cell: ({ conformity }) =>
        conformity.tolerance ? all(conformity.tolerance) : say(caption("noTolerance")),
    },
    { header: caption("acceptance"), unit: ["°C"], isNumber: true, cell: acceptance },
    {
      ...{ header: caption("probability"), isNumber: true },
      cell: ({ conformity }) =>
        conformity.probability ? all(conformity.probability) : say(caption("notStated")),
    },
    {
      header: caption("statement"),
      cell: ({ conformity }) => say(caption(`conformity.${conformity.state}`)),
    },
  ];
};

type Rows = readonly CertificateRow[];
type OfOne = { readonly heading: Said; readonly rows: Rows };

/** One table, or one for each item, set and run, under its name. */
const tablesOf = (page: Spoken, title: Said): readonly OfOne[] =>
  page.content.sets?.map((set) => ({ heading: setHeading(page, set), rows: set.rows })) ?? [
    { heading: title, rows: page.content.rows },
  ];

type InFahrenheit = {
  readonly row: CertificateRow;
  readonly said: NonNullable<CertificateRow["fahrenheit"]>;
};

/** The same results in the unit they were ordered in; nothing where that is °C. */
const inFahrenheit = (page: Spoken, rows: Rows): Html | null => {
  const stated = rows.flatMap((row) => (row.fahrenheit ? [{ row, said: row.fahrenheit }] : []));
  if (stated.length === 0) return null;
  const { caption } = page.words;
  const number = (header: Said, cell: (one: InFahrenheit) => string): Column<InFahrenheit> => ({
    ...{ header, unit: ["°F"], isNumber: true, cell },
  });
  const columns: readonly Column<InFahrenheit>[] = [
    { header: caption("setpoint"), unit: caption("asOrdered"), cell: ({ row }) => setpoint(row) },
    number(caption("reference"), ({ said }) => said.reference),
    number(caption("error"), ({ said }) => said.error),
    number(caption("correction"), ({ said }) => said.correction),
    number(["U"], ({ said }) => said.expanded),
    ...(stated.some(({ said }) => said.tolerance !== undefined)
      ? [number(caption("tolerance"), ({ said }) => said.tolerance ?? "")]
      : []),
    ...(stated.some(({ said }) => said.acceptance !== undefined)
      ? [number(caption("acceptance"), ({ said }) => said.acceptance ?? "")]
      : []),
  ];
  return all(
    table(page, { caption: page.say(caption("inFahrenheit")), columns, rows: stated }),
    el("p", {}, page.say(caption("inFahrenheit.note"))),
  );
};

const plotOf = ({ words, say }: Spoken, rows: Rows): Html | null => {
  const measured = rows.flatMap((row) => (row.plot ? [{ row, plot: row.plot }] : []));
  if (measured.length === 0) return null;
  const hasTolerance = measured.some(({ plot }) => plot.toleranceCelsius !== null);
  const { caption } = words;
  const drawing = deviationPlot({
    title: caption("errorFigure")[0],
    quantity: "error",
    unit: "°C",
    labels: { temperature: inLine(caption("temperatureAxis")), value: inLine(caption("errorAxis")) },
    points: measured.map(({ row, plot }) => ({
      nominalCelsius: plot.celsius,
      value: plot.errorCelsius,
      expanded: plot.expandedCelsius,
      printed: { value: row.errorCelsius, expanded: row.expandedCelsius },
    })),
    ...(hasTolerance
      ? { tolerance: measured.map(({ plot }) => ({ celsius: plot.celsius, limit: plot.toleranceCelsius })) }
      : {}),
  });
  const note = hasTolerance
    ? together(" ", caption("errorFigure.note"), caption("errorFigure.tolerance"))
    : caption("errorFigure.note");
  return figure(drawing, el("strong", {}, say(caption("errorFigure"))), el("p", {}, say(note)));
};

const notes = (page: Spoken): Html => {
  const { content, words } = page;
  const { caption, sentence } = words;
  const rows = content.sets?.flatMap((set) => set.rows) ?? content.rows;
  const remarks = rows.flatMap((row): readonly Said[] =>
    row.state === "measured" && row.remark ? [together(": ", [row.setpoint], sentence(row.remark))] : [],
  );
  return lines(page, [
    caption("resultsNote.reference"),
    caption("resultsNote.deviation"),
    caption("resultsNote.error"),
    caption("resultsNote.correction"),
    ...(content.scopeStatement ? [sentence(content.scopeStatement)] : []),
    ...(rows.some(({ isExternal }) => isExternal)
      ? [together(" ", [externalSign], sentence(content.externalResults))]
      : []),
    ...remarks,
  ]);
};

/** 7.8.2.1 m and 7.8.4.1 a: the results with their units, k and U; each figure's numbers are those of its table. */
export const results = (page: Spoken): Html => {
  const title = page.words.caption("results");
  return part(
    page,
    { caption: title },
    ...tablesOf(page, title).map(({ heading, rows }) =>
      all(
        table(page, { caption: page.say(heading), columns: columnsOf(page), rows, instead: instead(page) }),
        inFahrenheit(page, rows),
        plotOf(page, rows),
      ),
    ),
    notes(page),
  );
};

const rule = (page: Spoken, stated: NonNullable<CertificateContent["conformity"]>): Html =>
  lines(page, [stated.specification, stated.rule, stated.risk, stated.agreed].map(page.words.sentence));

/** 7.8.6.2: specification, rule and risk before any word of pass or fail is read. */
export const conformity = (page: Spoken): Html | null => {
  const { content, words } = page;
  if (content.conformity === null) return null;
  const title = words.caption("statementOfConformity");
  return part(
    page,
    { caption: title },
    rule(page, content.conformity),
    ...tablesOf(page, title).map(({ heading, rows }) =>
      table(page, {
        ...{ caption: page.say(heading), columns: statementColumns(page), rows, instead: instead(page) },
      }),
    ),
  );
};
