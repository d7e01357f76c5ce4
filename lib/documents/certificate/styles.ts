import { StyleSheet } from "@react-pdf/renderer";
import { printInks } from "@/lib/drawing/print-inks";
import { mixedInk } from "../drawing/mixed-ink";

/** A4, lengths in pt. Captions stand in a margin column, as on the screens; figures keep to the wide column. */
export const contentWidth = 595.28 - 2 * 46;
export const marginColumn = 98;
/** Of a drawing that stands alone. */
export const figureWidth = contentWidth * 0.68;

export const styles = StyleSheet.create({
  page: {
    paddingTop: 82,
    paddingBottom: 84,
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
    top: 768,
    left: 46,
    right: 46,
    borderTopWidth: 0.6,
    borderTopColor: printInks.faint,
    flexDirection: "row",
    justifyContent: "space-between",
    fontSize: 7.4,
    lineHeight: 1.4,
    color: printInks.muted,
  },
  footNumber: { position: "absolute", top: 773, left: 46, width: 420, fontSize: 8.8, fontWeight: 600 },
  title: { fontSize: 21, fontWeight: 600, lineHeight: 1.15 },
  /** A further language below the leading one. */
  further: { color: printInks.muted, fontWeight: 400 },
  blockTitle: { fontSize: 11, fontWeight: 600, lineHeight: 1.2 },
  section: { flexDirection: "row", marginTop: 6 },
  caption: { width: marginColumn, paddingRight: 10, fontWeight: 600, fontSize: 8.8 },
  body: { flex: 1 },
  strong: { fontWeight: 600 },
  row: {
    flexDirection: "row",
    borderBottomWidth: 0.4,
    borderBottomColor: printInks.faint,
    paddingVertical: 2.2,
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
  watermark: {
    position: "absolute",
    top: 330,
    left: 0,
    right: 0,
    textAlign: "center",
    fontSize: 74,
    fontWeight: 600,
    color: mixedInk(printInks.heat, 0.13),
    transform: "rotate(-38deg)",
  },
  /** Set apart by a rule of the one warm ink: what must be read before the rest. */
  notice: {
    marginTop: 8,
    borderLeftWidth: 2.4,
    borderLeftColor: printInks.heat,
    backgroundColor: printInks["heat-wash"],
    paddingLeft: 10,
    paddingRight: 8,
    paddingVertical: 6,
  },
  opinions: { borderLeftWidth: 1.2, borderLeftColor: printInks.edge, paddingLeft: 8 },
  /** 64 hexadecimal digits on one line of the body. */
  hash: { fontSize: 7, lineHeight: 1.35 },
  end: { marginTop: 16, flexDirection: "row", alignItems: "center", gap: 10 },
  endRule: { flex: 1, height: 0.6, backgroundColor: printInks.faint },
  endText: { color: printInks.muted },
});
