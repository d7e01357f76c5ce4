import { Text, View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { deviationPlot } from "@/lib/drawing/deviation-plot";
import { DrawingSvg } from "../drawing/drawing-svg";
import { contentWidth, styles } from "./styles";

/** The error with its U, inside the tolerance where one is stated. Its table is the one of the results. */
export const DeviationFigure = ({ content }: { readonly content: CertificateContent }) => {
  const measured = content.rows.flatMap((row) => (row.plot ? [{ row, plot: row.plot }] : []));
  if (measured.length === 0) return null;
  const hasTolerance = measured.some(({ plot }) => plot.toleranceCelsius !== null);
  const drawing = deviationPlot({
    title: "Error with its expanded uncertainty",
    quantity: "error",
    unit: "°C",
    points: measured.map(({ row, plot }) => ({
      nominalCelsius: plot.celsius,
      value: plot.errorCelsius,
      expanded: plot.expandedCelsius,
      printed: { value: row.errorCelsius, expanded: row.expandedCelsius },
    })),
    ...(hasTolerance
      ? { tolerance: measured.map(({ plot }) => ({ celsius: plot.celsius, limit: plot.toleranceCelsius })) }
      : {}),
  });
  return (
    <View style={{ marginTop: 14 }} wrap={false}>
      <Text style={[styles.strong, { fontSize: 11, marginBottom: 2 }]}>{drawing.title}</Text>
      <DrawingSvg drawing={drawing} width={contentWidth * 0.82} />
      <Text style={[styles.small, styles.muted]}>
        Bars: error ± U.{hasTolerance ? " Dashed: tolerance, where one is defined." : ""} Between the points
        the band only guides the eye.
      </Text>
    </View>
  );
};
