import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent, CertificateRow } from "@/lib/domain/certificate/content";
import { conformityLabels, rowStateLabels } from "@/lib/domain/certificate/labels";
import { outsideScopeSign } from "@/lib/domain/certificate/texts";
import { keyOfSet, setHeading } from "./sets";
import { styles } from "./styles";
import { type Column, Table } from "./table";

const instead = (row: CertificateRow): string | null =>
  row.state === "measured" ? null : `${rowStateLabels[row.state]}: ${row.remark}`;

/** A result outside the scope carries its sign wherever it stands. */
const signedSetpoint = (row: CertificateRow): string =>
  row.scope === "outside" ? `${row.setpoint} ${outsideScopeSign}` : row.setpoint;

const results: readonly Column<CertificateRow>[] = [
  { header: "Setpoint", unit: "as ordered", width: 58, align: "text", text: signedSetpoint },
  { header: "Reference", unit: "°C", width: 60, align: "number", text: (row) => row.referenceCelsius },
  {
    header: "Emf at setpoint",
    unit: "µV, junction 0 °C",
    width: 78,
    align: "number",
    text: (row) => row.emfMicrovolt,
  },
  { header: "Deviation", unit: "µV", width: 58, align: "number", text: (row) => row.deviationMicrovolt },
  { header: "U", unit: "µV", width: 44, align: "number", muted: true, text: (row) => row.expandedMicrovolt },
  { header: "Error", unit: "°C", width: 52, align: "number", text: (row) => row.errorCelsius },
  { header: "Correction", unit: "°C", width: 58, align: "number", text: (row) => row.correctionCelsius },
  { header: "U", unit: "°C", width: 46, align: "number", muted: true, text: (row) => row.expandedCelsius },
  { header: "k", width: 42, align: "number", text: (row) => row.coverageFactor },
];

const statements: readonly Column<CertificateRow>[] = [
  { header: "Setpoint", unit: "as ordered", width: 78, align: "text", text: signedSetpoint },
  { header: "Error", unit: "°C", width: 56, align: "number", text: (row) => row.errorCelsius },
  { header: "U", unit: "°C", width: 50, align: "number", muted: true, text: (row) => row.expandedCelsius },
  {
    header: "Tolerance",
    unit: "°C",
    width: 78,
    align: "number",
    text: (row) => row.conformity.tolerance || "none",
  },
  {
    header: "Probability of conformity",
    width: 110,
    align: "number",
    text: (row) => row.conformity.probability || "not stated",
  },
  {
    header: "Statement",
    width: 120,
    align: "text",
    indent: 10,
    text: (row) => conformityLabels[row.conformity.state],
  },
];

const remarks = (rows: readonly CertificateRow[]): readonly string[] =>
  rows.flatMap((row) => (row.state === "measured" && row.remark ? [`${row.setpoint}: ${row.remark}`] : []));

/** One table, or one for each item, set and run, under its name. */
const ResultTables = ({ content }: { readonly content: CertificateContent }) =>
  content.sets ? (
    content.sets.map((set) => (
      <View key={keyOfSet(set)} style={{ marginBottom: 8 }}>
        <Text style={[styles.strong, { marginBottom: 2 }]} minPresenceAhead={60}>
          {setHeading(set)}
        </Text>
        <Table columns={results} rows={set.rows} keyOf={(row) => row.setpoint} instead={instead} />
      </View>
    ))
  ) : (
    <Table columns={results} rows={content.rows} keyOf={(row) => row.setpoint} instead={instead} />
  );

const StatementTables = ({ content }: { readonly content: CertificateContent }) =>
  content.sets ? (
    content.sets.map((set) => (
      <View key={keyOfSet(set)} style={{ marginBottom: 6 }} wrap={false}>
        <Text style={[styles.strong, { marginBottom: 2 }]}>{setHeading(set)}</Text>
        <Table columns={statements} rows={set.rows} keyOf={(row) => row.setpoint} instead={instead} />
      </View>
    ))
  ) : (
    <Table columns={statements} rows={content.rows} keyOf={(row) => row.setpoint} instead={instead} />
  );

/** 7.8.2.1 m: the results with their units, over the full width. */
export const Results = ({ content }: { readonly content: CertificateContent }) => (
  <View style={{ marginTop: 14 }}>
    <Text style={[styles.strong, { fontSize: 11, marginBottom: 4 }]}>Results</Text>
    <ResultTables content={content} />
    <Text style={[styles.small, styles.muted, { marginTop: 4 }]}>
      Reference: temperature t₉₀ of the references within the stability window. Deviation: emf minus reference
      function. Error: indication minus reference temperature. Correction: to be added to the indication.
    </Text>
    {content.scopeStatement ? (
      <Text style={[styles.small, { marginTop: 2 }]}>{content.scopeStatement}</Text>
    ) : null}
    {remarks(content.sets?.flatMap(({ rows }) => rows) ?? content.rows).map((remark) => (
      <Text key={remark} style={[styles.small, { marginTop: 2 }]}>
        {remark}
      </Text>
    ))}
  </View>
);

/** 7.8.6.2: which results, which specification, which rule; whenever pass or fail appears, all three stand beside it. */
export const ConformityStatement = ({ content }: { readonly content: CertificateContent }) =>
  content.conformity === null ? null : (
    <View style={{ marginTop: 14 }} wrap={content.sets !== undefined}>
      <Text style={[styles.strong, { fontSize: 11, marginBottom: 4 }]}>Statement of conformity</Text>
      <StatementTables content={content} />
      <Text style={{ marginTop: 5 }}>{content.conformity.specification}.</Text>
      <Text>{content.conformity.rule}</Text>
      <Text>{content.conformity.risk}</Text>
      <Text>{content.conformity.agreed}.</Text>
    </View>
  );
