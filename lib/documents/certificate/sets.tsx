import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent, CertificateSet } from "@/lib/domain/certificate/content";
import { setKindLabels } from "@/lib/domain/parts/decide-set";
import { styles } from "./styles";
import { type Column, Table } from "./table";

type Change = NonNullable<CertificateContent["changes"]>[number];
type LotRow = NonNullable<CertificateContent["lot"]>["rows"][number];

/** Over each table: which item, which set, which run. */
export const setHeading = (set: CertificateSet): string => {
  const period =
    set.performedFrom === set.performedTo ? set.performedFrom : `${set.performedFrom} to ${set.performedTo}`;
  return [
    `Serial ${set.item.serial} (${set.item.tag})`,
    ...(set.item.material ? [set.item.material] : []),
    setKindLabels[set.kind].toLowerCase(),
    `run ${set.run.number}`,
    `measured ${period}`,
  ].join(" · ");
};

export const keyOfSet = (set: CertificateSet): string => `${set.item.tag} ${set.kind} ${set.run.number}`;

const changeColumns: readonly Column<Change["rows"][number]>[] = [
  { header: "Setpoint", unit: "as ordered", width: 90, align: "text", text: ({ setpoint }) => setpoint },
  { header: "Change", unit: "°C", width: 70, align: "number", text: (row) => row.changeCelsius },
  { header: "U", unit: "°C", width: 60, align: "number", muted: true, text: (row) => row.expandedCelsius },
];

const lotColumns: readonly Column<LotRow>[] = [
  { header: "Setpoint", unit: "as ordered", width: 80, align: "text", text: ({ setpoint }) => setpoint },
  { header: "Items", width: 50, align: "number", text: ({ items }) => String(items) },
  { header: "Average error", unit: "°C", width: 80, align: "number", text: (row) => row.averageErrorCelsius },
  { header: "Smallest", unit: "°C", width: 70, align: "number", text: (row) => row.smallestErrorCelsius },
  { header: "Largest", unit: "°C", width: 70, align: "number", text: (row) => row.largestErrorCelsius },
  { header: "Half range", unit: "°C", width: 70, align: "number", text: (row) => row.halfRangeCelsius },
];

const Title = ({ children }: { readonly children: string }) => (
  <Text style={[styles.strong, { fontSize: 11, marginBottom: 4 }]}>{children}</Text>
);

/** 7.8.4.1 d: what the annealing changed. */
export const Changes = ({ content }: { readonly content: CertificateContent }) =>
  content.changes ? (
    <View style={{ marginTop: 14 }}>
      {content.changes.map((change) => (
        <View key={change.tag} wrap={false} style={{ marginBottom: 6 }}>
          <Title>{`Change by the annealing, ${change.tag}`}</Title>
          <Table columns={changeColumns} rows={change.rows} keyOf={({ setpoint }) => setpoint} />
          <Text style={[styles.small, styles.muted, { marginTop: 4 }]}>{change.statement}</Text>
        </View>
      ))}
    </View>
  ) : null;

export const LotSummary = ({ content }: { readonly content: CertificateContent }) =>
  content.lot ? (
    <View style={{ marginTop: 14 }} wrap={false}>
      <Title>Average and spread of the items measured</Title>
      <Table columns={lotColumns} rows={content.lot.rows} keyOf={({ setpoint }) => setpoint} />
      <Text style={[styles.small, styles.muted, { marginTop: 4 }]}>{content.lot.statement}</Text>
    </View>
  ) : null;
