import { View } from "@react-pdf/renderer";
import type { CertificateFunction } from "@/lib/domain/certificate/content";
import { functionPlot } from "@/lib/drawing/function-plot";
import { DrawingSvg } from "../drawing/drawing-svg";
import { Block } from "./block";
import type { Paper } from "./paper";
import { Say } from "./say";
import { scientific } from "./scientific";
import { keyOfSet, setHeading } from "./sets";
import { contentWidth, figureWidth, styles } from "./styles";
import { type Column, Table } from "./table";
import { inLine, type Said, type Words } from "./words";

type Coefficient = CertificateFunction["coefficients"][number];
type Row = CertificateFunction["rows"][number];

const coefficients = ({ caption }: Words): readonly Column<Coefficient>[] => [
  { header: caption("coefficient"), width: 76, align: "text", text: ({ power }) => `a${power}` },
  { header: caption("value"), width: 150, align: "text", text: ({ value }) => scientific(value) },
  { header: caption("unit"), width: 80, align: "text", text: ({ unit }) => unit },
];

type SectionProps = { readonly paper: Paper; readonly fitted: CertificateFunction; readonly of?: Said };

const gap = 22;
const rowsInPanel = 34;

/** With remarks the table stands twice beside itself, without them three times. */
const panelsOf = (rows: readonly Row[]): number => (rows.some(({ remark }) => remark) ? 2 : 3);

const corrections = ({ caption, sentence }: Words, unit: string, panels: number): readonly Column<Row>[] => {
  const figures: readonly Column<Row>[] = [
    {
      header: caption("temperature"),
      unit: [unit],
      width: 58,
      align: "number",
      text: (row) => row.temperature,
    },
    {
      header: caption("correction"),
      unit: [unit],
      width: 54,
      align: "number",
      text: (row) => row.correction,
    },
    { header: ["U"], unit: [unit], width: 38, align: "number", muted: true, text: (row) => row.expanded },
  ];
  if (panels === 3) return figures;
  const remark: Column<Row> = {
    ...{ header: caption("remark"), width: (contentWidth - gap) / 2 - 150, align: "text", indent: 8 },
    ...{ text: (row: Row) => row.remark, said: (row: Row) => (row.remark ? sentence(row.remark) : [" "]) },
  };
  return [...figures, remark];
};

const cut = <T,>(all: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / size) }, (_, at) => all.slice(at * size, (at + 1) * size));

/**
 * The table in panels beside each other, read down each and then on: as tall as needed, never taller than a page, and
 * each panel under its own head.
 */
const Corrections = ({ paper: { words }, fitted, of }: SectionProps) => {
  const panels = panelsOf(fitted.rows);
  const columns = corrections(words, fitted.unit, panels);
  return cut(fitted.rows, panels * rowsInPanel).map((rows) => (
    <View key={rows[0]?.temperature} style={{ marginTop: 10 }} wrap={false}>
      <Say said={of ?? words.caption("function")} style={styles.strong} />
      <View style={{ flexDirection: "row", gap, marginTop: 3, alignItems: "flex-start" }}>
        {cut(rows, Math.max(8, Math.ceil(rows.length / panels))).map((panel) => (
          <Table
            key={panel[0]?.temperature}
            columns={columns}
            rows={panel}
            keyOf={(row) => row.temperature}
          />
        ))}
      </View>
    </View>
  ));
};

const chart = ({ plot }: CertificateFunction, { caption }: Words) =>
  functionPlot({
    title: "Deviation function with its expanded uncertainty",
    unit: "µV",
    quantity: "deviation",
    labels: {
      temperature: inLine(caption("temperatureAxis")),
      value: inLine(caption("deviationAxis")),
    },
    curve: plot.curve,
    points: plot.points.map((point) => ({ ...point, residual: point.value - point.fitted })),
  });

/** The function between the measured points, where it was asked for: curve, coefficients, table of corrections. */
export const FunctionSection = ({ paper, fitted, of }: SectionProps) => (
  <>
    <Block title={paper.words.caption("function")} {...(of ? { heading: of } : {})} isWhole>
      <DrawingSvg drawing={chart(fitted, paper.words)} width={figureWidth} />
      <Say
        said={paper.words.caption("function.note", { factor: fitted.coverageFactor })}
        style={{ ...styles.small, ...styles.muted, marginTop: 2, marginBottom: 4 }}
      />
      {fitted.statements.map((line) => (
        <Say key={line} said={paper.words.sentence(line)} />
      ))}
    </Block>
    <View style={{ marginTop: 8 }} wrap={false}>
      <Table
        columns={coefficients(paper.words)}
        rows={fitted.coefficients}
        keyOf={({ power }) => String(power)}
      />
    </View>
    <Corrections paper={paper} fitted={fitted} {...(of ? { of } : {})} />
  </>
);

export type FittedPart = { readonly key: string; readonly fitted: CertificateFunction; readonly of?: Said };

/** Of the one item; or of each item and set that has one, under its name. */
export const functionsOf = ({ content, words }: Paper): readonly FittedPart[] => {
  if (!content.sets) return content.function ? [{ key: "function", fitted: content.function }] : [];
  return content.sets.flatMap((set) =>
    set.function
      ? [{ key: `function ${keyOfSet(set)}`, fitted: set.function, of: setHeading(set, words) }]
      : [],
  );
};
