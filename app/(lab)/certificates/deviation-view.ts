import type { CertificateRow } from "@/lib/domain/certificate/content";
import { conformityLabels } from "@/lib/domain/certificate/labels";
import type { DeviationPlotView } from "@/lib/drawing/deviation-plot";

/** A certificate's measured rows as the picture of errors with their U inside the tolerance. */
export const deviationView = (title: string, rows: readonly CertificateRow[]): DeviationPlotView => {
  const plotted = rows.flatMap((row) => (row.plot ? [{ row, plot: row.plot }] : []));
  return {
    title,
    unit: "°C",
    quantity: "error",
    points: plotted.map(({ row, plot }) => ({
      nominalCelsius: plot.celsius,
      value: plot.errorCelsius,
      expanded: plot.expandedCelsius,
      printed: { value: row.errorCelsius, expanded: row.expandedCelsius },
      ...(row.conformity.state === "no-statement"
        ? {}
        : { statement: conformityLabels[row.conformity.state] }),
    })),
    tolerance: plotted.some(({ plot }) => plot.toleranceCelsius !== null)
      ? plotted.map(({ plot }) => ({ celsius: plot.celsius, limit: plot.toleranceCelsius }))
      : undefined,
  };
};
