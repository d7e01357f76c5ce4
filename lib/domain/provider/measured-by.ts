import { type ReportResults, reportUnitSigns } from "./report-results";

/** Said wherever it is shown: what a provider measured is never our own result, nor its certificate ours. */
export const measuredBy = (provider: string): string => `Measured by ${provider}, not by this laboratory`;

/** "600 °C: 0.52 °C, U = 1.10 °C (k = 2)": the certificate's own figures, not rounded again. */
export const reportLines = ({ unit, points }: ReportResults): readonly string[] =>
  points.map(({ nominalCelsius, value, expanded, coverageFactor }) => {
    const sign = reportUnitSigns[unit];
    const shown = value.replace("-", "\u2212");
    return `${nominalCelsius} °C: ${unit === "celsius" ? "deviation" : "emf"} ${shown} ${sign}, U = ${expanded} ${sign} (k = ${coverageFactor})`;
  });
