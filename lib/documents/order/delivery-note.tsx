import { Text, View } from "@react-pdf/renderer";
import { paperTitles } from "@/lib/domain/quotation/point-words";
import type { DeliveryNoteContent } from "@/lib/domain/shipment/content";
import { restOnNote } from "@/lib/domain/shipment/rest";
import { renderAlone } from "../render-alone";
import { Lines, Paper } from "./paper";
import { Section } from "./paper-section";
import { styles } from "./paper-styles";
import { type Column, Table } from "./paper-table";

type Sensor = DeliveryNoteContent["sensors"][number];

/** Broken here, not by the type-setter, which would let it run over the next column. */
const inLines = (serial: string): string => (serial.match(/.{1,24}/gu) ?? [serial]).join("\n");

const columns: readonly Column<Sensor>[] = [
  { header: "Serial number", width: 145, align: "text", text: ({ serial }) => inLines(serial) },
  { header: "Type", width: 40, align: "text", text: ({ typeLetter }) => typeLetter },
  { header: "Our tag", width: 70, align: "text", text: ({ tag }) => tag },
  {
    header: "Certificate",
    width: 150,
    align: "text",
    text: ({ certificates }) => certificates.join(", ") || "none",
  },
];

const handedOver = ({ handedOver: how, carrier, reference }: DeliveryNoteContent): string =>
  how === "carrier"
    ? `With ${carrier}${reference ? `, reference ${reference}` : ""}`
    : "Handed over in person";

/** One line to sign where somebody takes the parcel: custody ends there. */
const Receipt = () => (
  <Section caption="Received">
    <View style={{ flexDirection: "row", marginTop: 26, gap: 18 }}>
      {["Date", "Name", "Signature"].map((what) => (
        <View key={what} style={{ flex: 1, borderTopWidth: 0.6, paddingTop: 2 }}>
          <Text style={[styles.small, styles.muted]}>{what}</Text>
        </View>
      ))}
    </View>
  </Section>
);

const DeliveryNote = ({ content }: { readonly content: DeliveryNoteContent }) => {
  const title = paperTitles["delivery-note"];
  const { sensors, order, remaining, finished = 0, awaited = 0, missing = 0 } = content;
  return (
    <Paper
      title={title}
      number={content.number}
      on={content.on}
      laboratory={content.laboratory}
      subject={`Order ${order.number}`}
    >
      <Text style={styles.title}>{title}</Text>
      <Text style={{ fontSize: 12, marginTop: 3 }}>
        {`${sensors.length} ${sensors.length === 1 ? "sensor" : "sensors"} of order ${order.number}${order.purchaseOrder ? `, your purchase order ${order.purchaseOrder}` : ""}`}
      </Text>
      <View style={{ marginTop: 6 }}>
        <Section caption="To">
          <Lines of={[content.customer, ...content.address]} />
        </Section>
        <Section caption="Date">
          <Text>
            {content.on} · {handedOver(content)}
          </Text>
        </Section>
      </View>
      <Section caption="Sensors" mayBreak>
        <Table columns={columns} rows={sensors} keyOf={({ tag }) => tag} />
      </Section>
      {content.reason ? (
        <Section caption="Without certificate">
          <Text>{content.reason}</Text>
        </Section>
      ) : null}
      <Section caption="Still with us">
        <Text>{restOnNote({ remaining, finished, awaited, missing })}</Text>
      </Section>
      <Receipt />
    </Paper>
  );
};

/** Content in, PDF bytes out: the same bytes each time. No results stand on it, and no prices. */
export const renderDeliveryNote = (content: DeliveryNoteContent): Promise<Uint8Array> =>
  renderAlone(<DeliveryNote content={content} />);
