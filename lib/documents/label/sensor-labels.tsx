import { Document, Page, renderToBuffer, StyleSheet, Text, View } from "@react-pdf/renderer";
import { documentFont } from "../fonts";
import { demandReadable, LabelCode, pointsOf } from "./label-code";

export type SensorLabel = {
  readonly tag: string;
  readonly serial: string;
  readonly typeLetter: string;
  /** What the code says: the sensor's page. Whose it is stands only there, behind sign-in. */
  readonly address: string;
};

// Black on white: a thermal printer knows no grey.
const styles = StyleSheet.create({
  page: { flexDirection: "row", alignItems: "center", color: "#000000", padding: `0 ${pointsOf(1.5)}` },
  code: { alignItems: "center" },
  tag: { fontSize: 10, fontWeight: 600, lineHeight: 1, marginTop: -3 },
  words: { flex: 1, paddingLeft: pointsOf(1) },
  type: { fontSize: 12, fontWeight: 600, lineHeight: 1, marginBottom: 4 },
  small: { fontSize: 7, lineHeight: 1, marginBottom: 1.5 },
  serial: { fontWeight: 600, lineHeight: 1.1 },
});

const mostLines = 4;

/** A serial is broken here and not by the type-setter, which would add a hyphen that is not its own. */
export const serialLines = (serial: string): { readonly size: number; readonly lines: readonly string[] } => {
  const characters = [...serial];
  const isShort = characters.length <= 11;
  const width = isShort ? 11 : 16;
  const lines = Array.from({ length: Math.ceil(characters.length / width) }, (_, index) =>
    characters.slice(index * width, (index + 1) * width).join(""),
  );
  if (lines.length <= mostLines) return { size: isShort ? 10 : 7, lines };
  return { size: 7, lines: [...lines.slice(0, mostLines - 1), `${lines[mostLines - 1]?.slice(0, -1)}…`] };
};

const Label = ({ label }: { readonly label: SensorLabel }) => {
  const { size, lines } = serialLines(label.serial);
  return (
    <Page size={[pointsOf(50), pointsOf(25)]} style={[styles.page, { fontFamily: documentFont() }]}>
      <View style={styles.code}>
        <LabelCode text={label.address} />
        <Text style={styles.tag}>{label.tag}</Text>
      </View>
      <View style={styles.words}>
        <Text style={styles.type}>{`Type ${label.typeLetter}`}</Text>
        <Text style={styles.small}>Serial</Text>
        <Text style={[styles.serial, { fontSize: size }]}>{lines.join("\n")}</Text>
      </View>
    </Page>
  );
};

/** Labels of 50 by 25 mm, one a page, for a label printer. */
export const sensorLabels = async (labels: readonly SensorLabel[], printedAt: Date): Promise<Uint8Array> => {
  for (const label of labels) demandReadable(label.address);
  return renderToBuffer(
    <Document
      title="Sensor labels"
      creator="Emfolio"
      producer="Emfolio"
      language="en"
      creationDate={printedAt}
      modificationDate={printedAt}
    >
      {labels.map((label) => (
        <Label key={label.tag} label={label} />
      ))}
    </Document>,
  );
};
