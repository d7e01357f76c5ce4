import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import { documentFont } from "../fonts";
import { renderAlone } from "../render-alone";
import { demandReadable, LabelCode, pointsOf } from "./label-code";
import { serialLines } from "./sensor-labels";

/** Nothing on it goes with the equipment's state, which changes: that is what the code is for. */
export type EquipmentLabel = {
  readonly tag: string;
  readonly serial: string;
  readonly kind: string;
  /** YYYY-MM-DD of the calibration in force; null = none. */
  readonly dueOn: string | null;
  /** What the code says: the page of its live status. */
  readonly address: string;
};

// Black on white: a thermal printer knows no grey.
const styles = StyleSheet.create({
  page: { flexDirection: "row", alignItems: "center", color: "#000000", padding: `0 ${pointsOf(1.5)}` },
  words: { flex: 1, paddingLeft: pointsOf(1) },
  tag: { fontWeight: 600, lineHeight: 1, marginBottom: 3 },
  small: { fontSize: 6.5, lineHeight: 1.05, marginBottom: 1.5 },
  due: { fontSize: 10, fontWeight: 600, lineHeight: 1 },
});

/** A tag of up to forty characters is broken here, not by the type-setter, which would add a hyphen of its own. */
const tagLines = (tag: string): { readonly size: number; readonly text: string } => {
  const size = tag.length <= 9 ? 13 : tag.length <= 13 ? 10 : 7;
  const width = size === 7 ? 16 : 13;
  return { size, text: (tag.match(new RegExp(`.{1,${width}}`, "gu")) ?? [tag]).join("\n") };
};

const Label = ({ label }: { readonly label: EquipmentLabel }) => {
  const tag = tagLines(label.tag);
  return (
    <Page size={[pointsOf(50), pointsOf(25)]} style={[styles.page, { fontFamily: documentFont() }]}>
      <LabelCode text={label.address} />
      <View style={styles.words}>
        <Text style={[styles.tag, { fontSize: tag.size }]}>{tag.text}</Text>
        <Text style={styles.small}>{label.kind}</Text>
        <Text style={styles.small}>{`No. ${serialLines(label.serial).lines.slice(0, 2).join("\n")}`}</Text>
        <Text style={styles.small}>{label.dueOn ? "Calibration due" : "Status"}</Text>
        <Text style={styles.due}>{label.dueOn ?? "see the code"}</Text>
      </View>
    </Page>
  );
};

/** Labels of 50 by 25 mm, one a page, for a label printer. */
export const equipmentLabels = async (
  labels: readonly EquipmentLabel[],
  printedAt: Date,
): Promise<Uint8Array> => {
  for (const label of labels) demandReadable(label.address);
  return renderAlone(
    <Document
      title="Equipment labels"
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
