import { View } from "@react-pdf/renderer";
import type { CertificateContent, CertificateSet } from "@/lib/domain/certificate/content";
import { Block, rowsKept } from "./block";
import type { OnPaper } from "./paper";
import { Say } from "./say";
import { styles } from "./styles";
import { type Column, Table } from "./table";
import { lowered, type Said, together, type Words } from "./words";

type Change = NonNullable<CertificateContent["changes"]>[number];
type LotRow = NonNullable<CertificateContent["lot"]>["rows"][number];

/** Over each table: which item, which set, which run. */
export const setHeading = (set: CertificateSet, words: Words): Said => {
  const { caption } = words;
  const period: Said =
    set.performedFrom === set.performedTo
      ? [set.performedFrom]
      : caption("period", { from: set.performedFrom, to: set.performedTo });
  return together(
    " · ",
    together(" ", caption("serialNumber"), [`${set.item.serial} (${set.item.tag})`]),
    ...(set.item.material ? [words.sentence(set.item.material)] : []),
    lowered(caption(`set.${set.kind}`)),
    together(" ", lowered(caption("run")), [set.run.number]),
    together(" ", lowered(caption("measured")), period),
  );
};

export const keyOfSet = (set: CertificateSet): string => `${set.item.tag} ${set.kind} ${set.run.number}`;

/** What stands in one table: the results of a set, or those of the one item. */
export type ResultTable = CertificateSet | Pick<CertificateContent, "rows">;

export type TablesProps = OnPaper & { readonly tables: readonly ResultTable[]; readonly isFirst: boolean };

export const keyOfTable = (table: ResultTable): string => ("item" in table ? keyOfSet(table) : "the one");

export const tablesOf = ({ rows, sets }: CertificateContent): readonly ResultTable[] => sets ?? [{ rows }];

const changeColumns = ({ caption }: Words): readonly Column<Change["rows"][number]>[] => [
  {
    ...{ header: caption("setpoint"), unit: caption("asOrdered"), width: 90, align: "text" },
    text: ({ setpoint }) => setpoint,
  },
  { header: caption("change"), unit: ["°C"], width: 76, align: "number", text: (row) => row.changeCelsius },
  {
    header: ["U"],
    unit: ["°C"],
    width: 60,
    align: "number",
    muted: true,
    text: (row) => row.expandedCelsius,
  },
];

const lotColumns = ({ caption }: Words): readonly Column<LotRow>[] => [
  {
    ...{ header: caption("setpoint"), unit: caption("asOrdered"), width: 80, align: "text" },
    text: ({ setpoint }) => setpoint,
  },
  { header: caption("items"), width: 60, align: "number", text: ({ items }) => String(items) },
  {
    ...{ header: caption("averageError"), unit: ["°C"], width: 90, align: "number" },
    text: (row) => row.averageErrorCelsius,
  },
  {
    header: caption("smallest"),
    unit: ["°C"],
    width: 76,
    align: "number",
    text: (row) => row.smallestErrorCelsius,
  },
  {
    header: caption("largest"),
    unit: ["°C"],
    width: 76,
    align: "number",
    text: (row) => row.largestErrorCelsius,
  },
  {
    header: caption("halfRange"),
    unit: ["°C"],
    width: 84,
    align: "number",
    text: (row) => row.halfRangeCelsius,
  },
];

const Statement = ({ said }: { readonly said: Said }) => (
  <Say said={said} style={{ ...styles.small, ...styles.muted, marginTop: 4 }} />
);

/** 7.8.4.1 d: what the annealing changed. */
export const Changes = ({ paper: { content, words } }: OnPaper) =>
  content.changes?.map((change, at) => (
    <Block
      key={change.tag}
      title={words.caption("changeByAnnealing", { tag: change.tag })}
      {...(at === 0 ? {} : { gap: 10 })}
      isWhole={change.rows.length <= rowsKept}
    >
      <Table columns={changeColumns(words)} rows={change.rows} keyOf={({ setpoint }) => setpoint} />
      <Statement said={words.sentence(change.statement)} />
    </Block>
  )) ?? null;

export const LotSummary = ({ paper: { content, words } }: OnPaper) =>
  content.lot ? (
    <Block title={words.caption("lot")} isWhole={content.lot.rows.length <= rowsKept}>
      <Table columns={lotColumns(words)} rows={content.lot.rows} keyOf={({ setpoint }) => setpoint} />
      <View wrap={false}>
        <Statement said={words.sentence(content.lot.statement)} />
      </View>
    </Block>
  ) : null;
