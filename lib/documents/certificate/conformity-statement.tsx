import { View } from "@react-pdf/renderer";
import type { CertificateRow } from "@/lib/domain/certificate/content";
import { Block, rowsKept } from "./block";
import { isSimplified, type OnPaper, type Paper } from "./paper";
import { insteadOf, signedSetpoint } from "./row-words";
import { Say } from "./say";
import { keyOfTable, setHeading, type TablesProps } from "./sets";
import { type Column, Table } from "./table";
import { type Said, together, type Words } from "./words";

type Columns = readonly Column<CertificateRow>[];

/** The limit by which the rule decides; only where the content states it. */
const acceptance = ({ caption }: Words, rows: readonly CertificateRow[]): Columns =>
  rows.some((row) => row.conformity.acceptance !== undefined)
    ? [
        {
          ...{ header: caption("acceptance"), unit: ["°C"], width: 68, align: "number" },
          text: ({ conformity }) => (conformity.acceptance === undefined ? "" : `± ${conformity.acceptance}`),
        },
      ]
    : [];

/** What is said of conformity, without the figures it is said of. */
export const verdictColumns = (paper: Paper): Columns => {
  const { content, words } = paper;
  const { caption } = words;
  // Beside the results themselves there is no room for the limit; it follows from the rule that stands below.
  const isBeside = isSimplified(paper);
  const { tolerance, probability, room } = isBeside
    ? { tolerance: 54, probability: 70, room: 95 }
    : { tolerance: 64, probability: 104, room: 165 };
  const rows = content.sets?.flatMap((set) => set.rows) ?? content.rows;
  const limit = isBeside ? [] : acceptance(words, rows);
  return [
    {
      ...{ header: caption("tolerance"), unit: ["°C"], width: tolerance, align: "number" },
      text: (row) => row.conformity.tolerance || caption("noTolerance")[0],
    },
    ...limit,
    {
      ...{ header: caption("probability"), width: probability, align: "number" },
      text: (row) => row.conformity.probability || caption("notStated")[0],
    },
    {
      ...{ header: caption("statement"), width: room - (limit[0]?.width ?? 0), align: "text", indent: 12 },
      text: (row) => row.conformity.state,
      said: (row) => caption(`conformity.${row.conformity.state}`),
    },
  ];
};

const statementColumns = (paper: Paper): Columns => {
  const { caption } = paper.words;
  return [
    {
      ...{ header: caption("setpoint"), unit: caption("asOrdered"), width: 74, align: "text" },
      text: signedSetpoint,
    },
    { header: caption("error"), unit: ["°C"], width: 52, align: "number", text: (row) => row.errorCelsius },
    {
      ...{ header: ["U"], unit: ["°C"], width: 44, align: "number", muted: true },
      text: (row) => row.expandedCelsius,
    },
    ...verdictColumns(paper),
  ];
};

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

/** On a simplified certificate, whose results carry what is said of them. */
export const RuleAlone = ({ paper }: OnPaper) =>
  paper.content.conformity ? (
    <Block title={paper.words.caption("statementOfConformity")} isWhole>
      <Rule paper={paper} />
    </Block>
  ) : null;

/** Some of the tables; title and rule over the first. */
export const StatementTables = ({ paper, tables, isFirst }: TablesProps) => {
  const columns = statementColumns(paper);
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
