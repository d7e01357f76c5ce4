import type { CertificateContent, CertificateRow } from "../certificate/content";

export type EarlierRow = {
  readonly celsius: number;
  readonly errorCelsius: number;
  readonly expandedCelsius: number;
  readonly coverageFactor: number;
};

/** Printed numbers carry a minus sign of typography, and digits may stand in groups. */
const printedNumber = (printed: string): number =>
  Number(
    printed
      .replace("−", "-")
      .replaceAll(/[\s\u202f]/g, "")
      .replace(",", ".") || Number.NaN,
  );

const readRow = (row: CertificateRow): readonly EarlierRow[] => {
  if (row.state !== "measured") return [];
  const read = {
    celsius: printedNumber(row.nominalCelsius),
    errorCelsius: printedNumber(row.errorCelsius),
    expandedCelsius: printedNumber(row.expandedCelsius),
    coverageFactor: printedNumber(row.coverageFactor),
  };
  const isWhole =
    Object.values(read).every(Number.isFinite) && read.expandedCelsius > 0 && read.coverageFactor > 0;
  return isWhole ? [read] : [];
};

/**
 * What a certificate says of one sensor, by its tag: where it reports two sets, the later one, in which state the sensor
 * went back.
 */
export const earlierRows = (content: CertificateContent, tag: string): readonly EarlierRow[] => {
  const own = (content.sets ?? [content]).filter(({ item }) => item.tag === tag).at(-1);
  return own?.rows.flatMap(readRow) ?? [];
};

export const performedToOf = (content: CertificateContent, tag: string): string =>
  (content.sets ?? [content]).filter(({ item }) => item.tag === tag).at(-1)?.performedTo ??
  content.performedTo;
