import type { DccPlace } from "@/lib/domain/calibration/dcc-certificate";
import type { Proposed, ProposedOverall, ProposedUncertainty } from "@/lib/domain/calibration/dcc-proposal";
import { decimalNumber } from "./decimal-text";
import { siUnit } from "./si-unit";
import type { Figures } from "./table-columns";

type Size = {
  readonly value: number;
  readonly written: string;
  readonly how: string;
  readonly k: number | null;
};

const sizeAt = (figures: Figures, at: number, shift: number): Size | null => {
  const uncertainty = figures.column.uncertainty;
  if (!uncertainty) return null;
  const written = uncertainty.written[at] ?? "";
  const value = decimalNumber(written, shift);
  if (value === null) return null;
  if (uncertainty.kind === "expanded")
    return { value, written, how: "", k: uncertainty.coverageFactor[at] ?? null };
  if (uncertainty.kind === "standard")
    return { value, written, how: "standard uncertainty, that is k = 1", k: 1 };
  const [from, to] = [uncertainty.from[at] ?? null, uncertainty.to[at] ?? null];
  if (from === null || to === null) return null;
  // 1e-9 of the interval is noise of the subtraction, not of the measurement.
  const half = Number((((to - from) / 2) * Number(`1e${shift}`)).toPrecision(9));
  return {
    value: half,
    written: `${from} to ${to}`,
    how: "half of the coverage interval; no k is given for it",
    k: null,
  };
};

/** U of a row, from the column that carries the value. */
export const uncertaintyAt = (figures: Figures, row: number): ProposedUncertainty | null => {
  const { column } = figures;
  const at = column.written.length === 1 ? 0 : row;
  const unit = column.units[at] ?? "";
  const parsed = siUnit(unit);
  if (!column.uncertainty || !parsed.ok) return null;
  const shift = parsed.unit.shift + (figures.kind === "microvolt" ? 6 : 0);
  const size = sizeAt(figures, at, shift);
  if (!size) return null;
  const place: DccPlace = column.uncertainty.place;
  const scaled = shift === 0 ? "" : `× 10^${shift}${figures.kind === "microvolt" ? ", to µV" : ""}`;
  return {
    expanded: {
      value: size.value,
      written: `${size.written} ${unit}`,
      how: [size.how, scaled].filter((part) => part !== "").join("; "),
      from: place,
    },
    unit: figures.kind,
    coverageFactor:
      size.k === null ? null : { value: size.k, written: `k = ${size.k}`, how: "", from: place },
    coverageProbability:
      column.uncertainty.kind === "standard" ? null : (column.uncertainty.coverageProbability[at] ?? null),
    distribution: column.uncertainty.distribution[at] ?? null,
  };
};

const largest = (all: readonly ProposedUncertainty[]): ProposedUncertainty | null =>
  all.reduce<ProposedUncertainty | null>(
    (most, one) => (most === null || one.expanded.value > most.expanded.value ? one : most),
    null,
  );

type Overall = { readonly overall: ProposedOverall; readonly remarks: readonly string[] };

/** The form holds one U and one k for all points: the largest, and only where the k of all is the same. */
export const overallOf = (rows: readonly { readonly uncertainty: ProposedUncertainty | null }[]): Overall => {
  const all = rows.flatMap(({ uncertainty }) => uncertainty ?? []);
  if (all.length < rows.length)
    return {
      overall: null,
      remarks: [
        "The certificate gives no uncertainty for some of the values: enter U and k as its text states them.",
      ],
    };
  const factors = new Set(all.map(({ coverageFactor }) => coverageFactor?.value ?? null));
  const most = largest(all);
  const k: Proposed | null = most?.coverageFactor ?? null;
  if (!most || !k)
    return {
      overall: null,
      remarks: ["The certificate gives no coverage factor: enter k as its text states it."],
    };
  if (factors.size > 1)
    return {
      overall: null,
      remarks: [
        "The coverage factor differs from value to value: choose U and k for the whole range yourself.",
      ],
    };
  const isSame = all.every(({ expanded }) => expanded.value === most.expanded.value);
  const remark = `U is that of the value with the largest one; the certificate gives smaller ones for others.`;
  return {
    overall: { expanded: most.expanded, unit: most.unit, coverageFactor: k },
    remarks: isSame ? [] : [remark],
  };
};
