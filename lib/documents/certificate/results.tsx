import { View } from "@react-pdf/renderer";
import type { CertificateContent, CertificateRow } from "@/lib/domain/certificate/content";
import { Block, rowsKept } from "./block";
import { verdictColumns } from "./conformity-statement";
import { FahrenheitTable } from "./fahrenheit-table";
import { isSimplified, type OnPaper, type Paper } from "./paper";
import { externalSign, insteadOf, signedSetpoint } from "./row-words";
import { Say } from "./say";
import { keyOfTable, setHeading, type TablesProps } from "./sets";
import { styles } from "./styles";
import { type Column, Table } from "./table";
import { type Said, together, type Words } from "./words";

const unit = (text: string): Said => [text];

/** The columns a simplified certificate keeps: what is read off, with its U and k. */
const inSimplified = new Set(["setpoint", "reference", "error", "correction", "celsius", "k"]);

const resultColumns = (paper: Paper): readonly Column<CertificateRow>[] => {
  const { caption } = paper.words;
  const all: readonly (Column<CertificateRow> & { readonly key: string })[] = [
    {
      ...{ key: "setpoint", header: caption("setpoint"), unit: caption("asOrdered") },
      ...{ width: 58, align: "text", text: signedSetpoint },
    },
    {
      ...{ key: "reference", header: caption("reference"), unit: unit("°C") },
      ...{ width: 62, align: "number", text: (row) => row.referenceCelsius },
    },
    {
      ...{ key: "emf", header: caption("emfAtSetpoint"), unit: caption("junctionAtZero") },
      ...{ width: 80, align: "number", text: (row) => row.emfMicrovolt },
    },
    {
      ...{ key: "deviation", header: caption("deviation"), unit: unit("µV") },
      ...{ width: 58, align: "number", text: (row) => row.deviationMicrovolt },
    },
    {
      ...{ key: "microvolt", header: unit("U"), unit: unit("µV") },
      ...{ width: 44, align: "number", muted: true, text: (row) => row.expandedMicrovolt },
    },
    {
      ...{ key: "error", header: caption("error"), unit: unit("°C") },
      ...{ width: 54, align: "number", text: (row) => row.errorCelsius },
    },
    {
      ...{ key: "correction", header: caption("correction"), unit: unit("°C") },
      ...{ width: 60, align: "number", text: (row) => row.correctionCelsius },
    },
    {
      ...{ key: "celsius", header: unit("U"), unit: unit("°C") },
      ...{ width: 46, align: "number", muted: true, text: (row) => row.expandedCelsius },
    },
    {
      ...{ key: "k", header: unit("k") },
      ...{ width: 41, align: "number", text: (row) => row.coverageFactor },
    },
  ];
  if (!isSimplified(paper)) return all;
  const brief = all.filter(({ key }) => inSimplified.has(key));
  return paper.content.conformity
    ? [...brief.map((column) => ({ ...column, width: column.width - 6 })), ...verdictColumns(paper)]
    : brief.map((column) => ({ ...column, width: column.width + 24 }));
};

const remarks = (rows: readonly CertificateRow[], words: Words): readonly Said[] =>
  rows.flatMap((row) =>
    row.state === "measured" && row.remark
      ? [together(": ", [row.setpoint], words.sentence(row.remark))]
      : [],
  );

const rowsOf = (content: CertificateContent): readonly CertificateRow[] =>
  content.sets?.flatMap(({ rows }) => rows) ?? content.rows;

/** What the heads of the columns and the signs beside the setpoints mean. */
export const ResultNotes = ({ paper }: OnPaper) => {
  const { content, words } = paper;
  const rows = rowsOf(content);
  const keys = isSimplified(paper)
    ? (["resultsNote.reference", "resultsNote.error", "resultsNote.correction"] as const)
    : ([
        "resultsNote.reference",
        "resultsNote.deviation",
        "resultsNote.error",
        "resultsNote.correction",
      ] as const);
  const small = { ...styles.small, marginTop: 2 };
  return (
    <View style={{ marginTop: 3 }} wrap={false}>
      <Say
        said={together(" ", ...keys.map((key) => words.caption(key)))}
        style={{ ...small, ...styles.muted }}
      />
      {content.scopeStatement ? <Say said={words.sentence(content.scopeStatement)} style={small} /> : null}
      {rows.some(({ isExternal }) => isExternal) ? (
        <Say said={together(" ", [externalSign], words.sentence(content.externalResults))} style={small} />
      ) : null}
      {remarks(rows, words).map((remark) => (
        <Say key={remark[0]} said={remark} style={small} />
      ))}
    </View>
  );
};

/** Some of the tables, one for each item, set and run; the title over the first. */
export const ResultTables = ({ paper, tables, isFirst }: TablesProps) => {
  const columns = resultColumns(paper);
  return tables.map((of, at) => (
    <Block
      key={keyOfTable(of)}
      {...(isFirst && at === 0 ? { title: paper.words.caption("results") } : {})}
      {...("item" in of ? { heading: setHeading(of, paper.words) } : {})}
      isWhole={of.rows.length <= rowsKept}
    >
      <Table
        columns={columns}
        rows={of.rows}
        keyOf={(row) => row.setpoint}
        instead={insteadOf(paper.words)}
      />
      <FahrenheitTable paper={paper} rows={of.rows} />
    </Block>
  ));
};
