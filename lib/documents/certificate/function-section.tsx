import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent, CertificateFunction } from "@/lib/domain/certificate/content";
import { functionPlot } from "@/lib/drawing/function-plot";
import { DrawingSvg } from "../drawing/drawing-svg";
import { scientific } from "./scientific";
import { keyOfSet, setHeading } from "./sets";
import { contentWidth, styles } from "./styles";
import { type Column, Table } from "./table";

type Coefficient = CertificateFunction["coefficients"][number];
type Row = CertificateFunction["rows"][number];

const coefficients: readonly Column<Coefficient>[] = [
  { header: "Coefficient", width: 70, align: "text", text: ({ power }) => `a${power}` },
  { header: "Value", width: 150, align: "text", text: ({ value }) => scientific(value) },
  { header: "Unit", width: 80, align: "text", text: ({ unit }) => unit },
];

const corrections = (unit: string): readonly Column<Row>[] => [
  { header: "Temperature", unit, width: 80, align: "number", text: ({ temperature }) => temperature },
  { header: "Correction", unit, width: 80, align: "number", text: ({ correction }) => correction },
  { header: "U", unit, width: 60, align: "number", muted: true, text: ({ expanded }) => expanded },
  { header: "Remark", width: 220, align: "text", indent: 14, text: (row) => row.remark },
];

const chart = ({ plot }: CertificateFunction) =>
  functionPlot({
    title: "Deviation function with its expanded uncertainty",
    unit: "µV",
    quantity: "deviation",
    curve: plot.curve,
    points: plot.points.map((point) => ({ ...point, residual: point.value - point.fitted })),
  });

/** The function between the measured points, where it was asked for: curve, coefficients, table of corrections. */
const FunctionSection = ({ fitted, of }: { readonly fitted: CertificateFunction; readonly of: string }) => (
  <View style={{ marginTop: 14 }}>
    <View wrap={false}>
      <Text style={[styles.strong, { fontSize: 11, marginBottom: 2 }]}>
        Deviation function and corrections{of}
      </Text>
      <DrawingSvg drawing={chart(fitted)} width={contentWidth * 0.82} />
      <Text style={[styles.small, styles.muted, { marginBottom: 4 }]}>
        Dots: measured points. Band: U of the curve as computed, k = {fitted.coverageFactor}.
      </Text>
      {fitted.statements.map((line) => (
        <Text key={line}>{line}</Text>
      ))}
    </View>
    <View style={{ marginTop: 6 }} wrap={false}>
      <Table columns={coefficients} rows={fitted.coefficients} keyOf={({ power }) => String(power)} />
    </View>
    <View style={{ marginTop: 8 }}>
      <Table columns={corrections(fitted.unit)} rows={fitted.rows} keyOf={(row) => row.temperature} />
    </View>
  </View>
);

/** Of the one item; or of each item and set that has one, under its name. */
export const FunctionSections = ({ content }: { readonly content: CertificateContent }) =>
  content.sets ? (
    content.sets.map((set) =>
      set.function ? (
        <FunctionSection key={keyOfSet(set)} fitted={set.function} of={`: ${setHeading(set)}`} />
      ) : null,
    )
  ) : content.function ? (
    <FunctionSection fitted={content.function} of="" />
  ) : null;
