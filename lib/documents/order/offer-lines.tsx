import { Text, View } from "@react-pdf/renderer";
import type { OfferContent } from "@/lib/domain/quotation/content";
import { conformityWords, scopeWords } from "@/lib/domain/quotation/point-words";
import { Section } from "./paper-section";
import { styles } from "./paper-styles";
import { type Column, Table } from "./paper-table";

type Line = OfferContent["lines"][number];
type Point = Line["points"][number];

const columns: readonly Column<Point>[] = [
  { header: "Setpoint", width: 72, align: "text", text: ({ setpoint }) => setpoint },
  { header: "Tolerance", width: 92, align: "text", text: ({ tolerance }) => tolerance },
  { header: "U to expect", width: 82, align: "text", text: ({ expected }) => expected },
  { header: "Scope", width: 69, align: "text", text: ({ scope }) => scopeWords[scope] },
  { header: "Pass or fail", width: 90, align: "text", text: ({ conformity }) => conformityWords[conformity] },
];

/** One line of the order: which sensors, what is done with them, and what can be said at each point. */
const OfferLine = ({ line }: { readonly line: Line }) => (
  <View style={{ marginBottom: 9 }}>
    <Text style={styles.strong} minPresenceAhead={60}>
      {`Line ${line.position}: ${line.quantity} ${line.quantity === 1 ? "thermocouple" : "thermocouples"} type ${line.typeLetter}${line.group ? `, “${line.group}”` : ""}`}
    </Text>
    <Text>{line.description}</Text>
    {line.specification ? <Text>Judged by: {line.specification}.</Text> : null}
    {line.extras.map((extra) => (
      <Text key={extra}>· {extra}</Text>
    ))}
    <View style={{ marginTop: 4 }}>
      <Table columns={columns} rows={line.points} keyOf={({ setpoint }) => setpoint} />
    </View>
  </View>
);

export const OfferLines = ({ lines }: { readonly lines: readonly Line[] }) => (
  <Section caption="Work and points" mayBreak>
    {lines.map((line) => (
      <OfferLine key={line.position} line={line} />
    ))}
    <Text style={[styles.small, styles.muted]}>
      U is the expanded uncertainty, k for about 95 %, as today’s standards and the laboratory’s procedure let
      expect it; the certificate states what was reached.
    </Text>
  </Section>
);
