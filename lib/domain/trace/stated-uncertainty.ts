import { z } from "zod";

export type StatedUncertainty = {
  readonly expanded: number;
  readonly unit: "°C" | "µV";
  readonly coverageFactor: number;
};

const positive = z.number().positive();
const factor = z.number().min(1).default(2);
const units = { celsius: "°C", microvolt: "µV" } as const;
const unit = z.enum(["celsius", "microvolt"]);

/** Only what bears on U: kinds of findings to come need no word here as long as they name U in one of these ways. */
const ByUnit = z.object({
  expanded: positive,
  unit,
  coverageFactor: factor,
  points: z.array(z.object({ celsius: z.number(), expanded: positive.optional() })).default([]),
});
const InMicrovolt = z.object({ expandedMicrovolt: positive, coverageFactor: factor });
const InCelsius = z.object({ expandedCelsius: positive, coverageFactor: factor });
const HalfWidth = z.object({ parasiticHalfWidthMicrovolt: positive });

type Point = { readonly celsius: number; readonly expanded: number };

/** Between two points with a U of their own, the larger of the two; beyond them the nearest. */
const atPoint = (points: readonly Point[], celsius: number): number | null => {
  const sorted = [...points].sort((a, b) => a.celsius - b.celsius);
  const below = sorted.filter((point) => point.celsius <= celsius).at(-1);
  const above = sorted.find((point) => point.celsius >= celsius);
  const near = [below, above].flatMap((point) => (point ? [point.expanded] : []));
  return near.length === 0 ? null : Math.max(...near);
};

/**
 * U of a calibration at the temperature it was used at, with its k, as its certificate states it; null where it states
 * none. A half-width is given as it stands, with k = √3: its standard uncertainty is a/√3 (JCGM 100:2008, 4.3.7).
 */
export const statedUncertaintyAt = (findings: unknown, celsius: number | null): StatedUncertainty | null => {
  const byUnit = ByUnit.safeParse(findings);
  if (byUnit.success) {
    const { expanded, coverageFactor, points } = byUnit.data;
    const own = points.flatMap((point) =>
      point.expanded === undefined ? [] : [{ celsius: point.celsius, expanded: point.expanded }],
    );
    const there = celsius === null ? null : atPoint(own, celsius);
    const largest = Math.max(expanded, ...own.map((point) => point.expanded));
    return { expanded: there ?? largest, unit: units[byUnit.data.unit], coverageFactor };
  }
  const microvolt = InMicrovolt.safeParse(findings);
  if (microvolt.success)
    return {
      expanded: microvolt.data.expandedMicrovolt,
      unit: "µV",
      coverageFactor: microvolt.data.coverageFactor,
    };
  const inCelsius = InCelsius.safeParse(findings);
  if (inCelsius.success)
    return {
      expanded: inCelsius.data.expandedCelsius,
      unit: "°C",
      coverageFactor: inCelsius.data.coverageFactor,
    };
  const width = HalfWidth.safeParse(findings);
  return width.success
    ? { expanded: width.data.parasiticHalfWidthMicrovolt, unit: "µV", coverageFactor: Math.sqrt(3) }
    : null;
};
