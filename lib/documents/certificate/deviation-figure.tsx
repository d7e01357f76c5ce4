import { View } from "@react-pdf/renderer";
import type { CertificateContent, CertificateRow, CertificateSet } from "@/lib/domain/certificate/content";
import { deviationPlot } from "@/lib/drawing/deviation-plot";
import { DrawingSvg } from "../drawing/drawing-svg";
import { Block } from "./block";
import type { OnPaper, Paper } from "./paper";
import { Say } from "./say";
import { keyOfSet, setHeading } from "./sets";
import { contentWidth, figureWidth, styles } from "./styles";
import { inLine, type Said, together } from "./words";

type Rows = readonly CertificateRow[];

const measuredOf = (rows: Rows) => rows.flatMap((row) => (row.plot ? [{ row, plot: row.plot }] : []));
const hasTolerance = (rows: Rows): boolean =>
  measuredOf(rows).some(({ plot }) => plot.toleranceCelsius !== null);

const drawingOf = (rows: Rows, { words }: Paper, width: number) => {
  const measured = measuredOf(rows);
  return deviationPlot(
    {
      title: words.caption("errorFigure")[0],
      quantity: "error",
      unit: "°C",
      labels: {
        temperature: inLine(words.caption("temperatureAxis")),
        value: inLine(words.caption("errorAxis")),
      },
      points: measured.map(({ row, plot }) => ({
        nominalCelsius: plot.celsius,
        value: plot.errorCelsius,
        expanded: plot.expandedCelsius,
        printed: { value: row.errorCelsius, expanded: row.expandedCelsius },
      })),
      ...(hasTolerance(rows)
        ? { tolerance: measured.map(({ plot }) => ({ celsius: plot.celsius, limit: plot.toleranceCelsius })) }
        : {}),
    },
    width,
  );
};

const Note = ({ paper, rows }: OnPaper & { readonly rows: Rows }) => {
  const { caption } = paper.words;
  const said: Said = hasTolerance(rows)
    ? together(" ", caption("errorFigure.note"), caption("errorFigure.tolerance"))
    : caption("errorFigure.note");
  return <Say said={said} style={{ ...styles.small, ...styles.muted, marginTop: 2 }} />;
};

const gap = 18;
const half = (contentWidth - gap) / 2;

/** Two beside each other, each under the name of its item and set. */
const Pair = ({ paper, pair }: OnPaper & { readonly pair: readonly CertificateSet[] }) => (
  <View style={{ flexDirection: "row", gap }}>
    {pair.map((set) => (
      <View key={keyOfSet(set)} style={{ width: half }}>
        <Say
          said={setHeading({ ...set, item: { ...set.item, material: undefined } }, paper.words)}
          style={styles.small}
        />
        <DrawingSvg drawing={drawingOf(set.rows, paper, 380)} width={half} />
      </View>
    ))}
  </View>
);

/** Sets whose figures stand together; as many pairs on a page as fit. */
export const figureSets = (content: CertificateContent): readonly CertificateSet[] =>
  (content.sets ?? []).filter(({ rows }) => measuredOf(rows).length > 0);

type SmallFiguresProps = OnPaper & { readonly sets: readonly CertificateSet[]; readonly isFirst: boolean };

export const SmallFigures = ({ paper, sets, isFirst }: SmallFiguresProps) => {
  const pairs = sets.flatMap((_, at) => (at % 2 === 0 ? [sets.slice(at, at + 2)] : []));
  return pairs.map((pair, at) => (
    <Block
      key={pair.map(keyOfSet).join(" ")}
      {...(isFirst && at === 0 ? { title: paper.words.caption("errorFigure") } : {})}
      isWhole
    >
      <Pair paper={paper} pair={pair} />
      {at === pairs.length - 1 ? <Note paper={paper} rows={sets.flatMap(({ rows }) => rows)} /> : null}
    </Block>
  ));
};

/** The error with its U, inside the tolerance where one is stated. Its table is the one of the results. */
export const DeviationFigure = ({ paper }: OnPaper) => {
  const { content, words } = paper;
  if (content.sets) return <SmallFigures paper={paper} sets={figureSets(content)} isFirst />;
  if (measuredOf(content.rows).length === 0) return null;
  return (
    <Block title={words.caption("errorFigure")} isWhole>
      <DrawingSvg drawing={drawingOf(content.rows, paper, 640)} width={figureWidth} />
      <Note paper={paper} rows={content.rows} />
    </Block>
  );
};
