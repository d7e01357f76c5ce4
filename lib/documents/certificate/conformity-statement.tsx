import { View } from "@react-pdf/renderer";
import type { CertificateRow } from "@/lib/domain/certificate/content";
import { Block, rowsKept } from "./block";
import type { OnPaper } from "./paper";
import { insteadOf, signedSetpoint } from "./results";
import { Say } from "./say";
import { keyOfTable, setHeading, type TablesProps } from "./sets";
import { type Column, Table } from "./table";
import { type Said, together, type Words } from "./words";

const statementColumns = ({ caption }: Words): readonly Column<CertificateRow>[] => [
  { header: caption("setpoint"), unit: caption("asOrdered"), width: 78, align: "text", text: signedSetpoint },
  { header: caption("error"), unit: ["°C"], width: 56, align: "number", text: (row) => row.errorCelsius },
  {
    header: ["U"],
    unit: ["°C"],
    width: 50,
    align: "number",
    muted: true,
    text: (row) => row.expandedCelsius,
  },
  {
    ...{ header: caption("tolerance"), unit: ["°C"], width: 78, align: "number" },
    text: (row) => row.conformity.tolerance || caption("noTolerance")[0],
  },
  {
    ...{ header: caption("probability"), width: 110, align: "number" },
    text: (row) => row.conformity.probability || caption("notStated")[0],
  },
  {
    ...{ header: caption("statement"), width: 131, align: "text", indent: 14 },
    text: (row) => row.conformity.state,
    said: (row) => caption(`conformity.${row.conformity.state}`),
  },
];

const sentence = (said: Said): Said => together("", said, ["."]);

/** 7.8.6.2: which specification and which rule, with its risk: before any word of pass or fail is read. */
const Rule = ({ paper: { content, words } }: OnPaper) =>
  content.conformity ? (
    <View style={{ marginBottom: 6 }}>
      <Say said={sentence(words.sentence(content.conformity.specification))} />
      <Say said={words.sentence(content.conformity.rule)} />
      <Say said={words.sentence(content.conformity.risk)} />
      <Say said={sentence(words.sentence(content.conformity.agreed))} />
    </View>
  ) : null;

/** Some of the tables; title and rule over the first. */
export const StatementTables = ({ paper, tables, isFirst }: TablesProps) => {
  const columns = statementColumns(paper.words);
  const first = { title: paper.words.caption("statementOfConformity"), introduction: <Rule paper={paper} /> };
  return tables.map((of, at) => (
    <Block
      key={keyOfTable(of)}
      {...(isFirst && at === 0 ? first : {})}
      {...("item" in of ? { heading: setHeading(of, paper.words) } : {})}
      isWhole={of.rows.length <= rowsKept}
    >
      <Table
        columns={columns}
        rows={of.rows}
        keyOf={(row) => row.setpoint}
        instead={insteadOf(paper.words)}
      />
    </Block>
  ));
};
