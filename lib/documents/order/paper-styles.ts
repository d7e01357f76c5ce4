import { StyleSheet } from "@react-pdf/renderer";
import { printInks } from "@/lib/drawing/print-inks";

/**
 * The look of the papers of an order, their own: they are rendered anew from their content and compared byte for byte,
 * so it stays as it was when they were sent, whatever becomes of the certificate's. A4, lengths in pt. Captions stand in a margin column, as on the screens; figures keep to the wide column.
 */
const marginColumn = 98;

export const styles = StyleSheet.create({
  page: {
    paddingTop: 92,
    paddingBottom: 66,
    paddingHorizontal: 46,
    fontSize: 8.8,
    lineHeight: 1.35,
    color: printInks.ink,
  },
  head: {
    position: "absolute",
    top: 34,
    left: 46,
    right: 46,
    flexDirection: "row",
    justifyContent: "space-between",
    borderBottomWidth: 0.6,
    borderBottomColor: printInks.edge,
    paddingBottom: 7,
  },
  headMark: {
    position: "absolute",
    left: 0,
    bottom: -1.2,
    width: 40,
    height: 2,
    backgroundColor: printInks.heat,
  },
  headName: { fontSize: 10.5, fontWeight: 600 },
  headNumber: { fontSize: 10.5, fontWeight: 600, textAlign: "right" },
  muted: { color: printInks.muted },
  small: { fontSize: 7.4, lineHeight: 1.35 },
  foot: {
    position: "absolute",
    top: 795,
    left: 46,
    right: 46,
    borderTopWidth: 0.6,
    borderTopColor: printInks.faint,
    paddingTop: 5,
    flexDirection: "row",
    justifyContent: "space-between",
    fontSize: 7.4,
    color: printInks.muted,
  },
  title: { fontSize: 21, fontWeight: 600, lineHeight: 1.15 },
  section: { flexDirection: "row", marginTop: 9 },
  caption: { width: marginColumn, paddingRight: 10, fontWeight: 600, fontSize: 8.8 },
  body: { flex: 1 },
  strong: { fontWeight: 600 },
  row: {
    flexDirection: "row",
    borderBottomWidth: 0.4,
    borderBottomColor: printInks.faint,
    paddingVertical: 2.6,
  },
  headRow: {
    flexDirection: "row",
    borderBottomWidth: 0.8,
    borderBottomColor: printInks.edge,
    paddingBottom: 2.5,
    alignItems: "flex-end",
  },
  headCell: { fontSize: 7.6, fontWeight: 600, lineHeight: 1.2 },
  unit: { fontSize: 7.2, fontWeight: 400, color: printInks.muted, lineHeight: 1.2 },
  number: { textAlign: "right" },
});
