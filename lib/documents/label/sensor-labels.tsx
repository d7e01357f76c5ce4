import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import { type LabelLayout, labelLayouts, labelPlace } from "@/lib/domain/sensor/label-layouts";
import { documentFont } from "../fonts";
import { renderAlone } from "../render-alone";
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
  label: {
    position: "absolute",
    flexDirection: "row",
    alignItems: "center",
    color: "#000000",
    // A sheet is fed a little askew: nothing is printed nearer to the edge.
    padding: `0 ${pointsOf(1.5)}`,
  },
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

type LabelProps = {
  readonly label: SensorLabel;
  readonly layout: LabelLayout;
  readonly leftMillimetre: number;
  readonly topMillimetre: number;
};

const Label = ({ label, layout, leftMillimetre, topMillimetre }: LabelProps) => {
  const { size, lines } = serialLines(label.serial);
  const place = {
    left: pointsOf(leftMillimetre),
    top: pointsOf(topMillimetre),
    width: pointsOf(layout.widthMillimetre),
    height: pointsOf(layout.heightMillimetre),
  };
  return (
    <View style={[styles.label, place]}>
      <View style={styles.code}>
        <LabelCode text={label.address} />
        <Text style={styles.tag}>{label.tag}</Text>
      </View>
      <View style={styles.words}>
        <Text style={styles.type}>{`Type ${label.typeLetter}`}</Text>
        <Text style={styles.small}>Serial</Text>
        <Text style={[styles.serial, { fontSize: size }]}>{lines.join("\n")}</Text>
      </View>
    </View>
  );
};

const pageSize = ({ sheet, widthMillimetre, heightMillimetre }: LabelLayout): [number, number] =>
  sheet
    ? [pointsOf(sheet.widthMillimetre), pointsOf(sheet.heightMillimetre)]
    : [pointsOf(widthMillimetre), pointsOf(heightMillimetre)];

/** Labels on a roll or on sheets, the first at place `startAt` of the first sheet. */
export const sensorLabels = async (
  labels: readonly SensorLabel[],
  printedAt: Date,
  layout: LabelLayout = labelLayouts["roll-50x25"],
  startAt = 1,
): Promise<Uint8Array> => {
  for (const label of labels) demandReadable(label.address);
  const placed = labels.map((label, index) => ({ label, ...labelPlace(layout, index, startAt) }));
  const pages = [...new Set(placed.map(({ page }) => page))];
  return renderAlone(
    <Document
      title="Sensor labels"
      creator="Emfolio"
      producer="Emfolio"
      language="en"
      creationDate={printedAt}
      modificationDate={printedAt}
    >
      {pages.map((page) => (
        <Page key={page} size={pageSize(layout)} style={{ fontFamily: documentFont() }}>
          {placed
            .filter((each) => each.page === page)
            .map((each) => (
              <Label key={each.label.tag} layout={layout} {...each} />
            ))}
        </Page>
      ))}
    </Document>,
  );
};
