export type ReferenceUse = {
  readonly hoursInFurnace: number;
  readonly hoursAbove1000: number;
  readonly highestCelsius: number;
};

type Series = { readonly seconds: ArrayLike<number>; readonly celsius: ArrayLike<number> };

/** Above this platinum ages by grain growth and loss of rhodium oxide (common practice counts hours from here, no source). */
export const AGEING_CELSIUS = 1000;
const SECONDS_IN_AN_HOUR = 3600;

/** The part of the time between two readings that a straight line between them lies above the limit. */
const partAbove = (before: number, after: number): number => {
  if (before >= AGEING_CELSIUS && after >= AGEING_CELSIUS) return 1;
  if (before < AGEING_CELSIUS && after < AGEING_CELSIUS) return 0;
  return (Math.max(before, after) - AGEING_CELSIUS) / Math.abs(after - before);
};

/**
 * What a run cost a reference, from its own readings in the order of time: from the first to the last it was in the
 * furnace, and between two readings its temperature went straight. Null without two readings.
 */
export const referenceUse = ({ seconds, celsius }: Series): ReferenceUse | null => {
  const first = seconds[0];
  const last = seconds[seconds.length - 1];
  if (first === undefined || last === undefined || seconds.length < 2) return null;
  let above = 0;
  let highest = celsius[0] as number;
  for (let i = 1; i < seconds.length; i += 1) {
    const after = celsius[i] as number;
    above +=
      partAbove(celsius[i - 1] as number, after) * ((seconds[i] as number) - (seconds[i - 1] as number));
    if (after > highest) highest = after;
  }
  const hoursInFurnace = (last - first) / SECONDS_IN_AN_HOUR;
  return {
    hoursInFurnace,
    // Adding up may end a bit beyond the whole.
    hoursAbove1000: Math.min(above / SECONDS_IN_AN_HOUR, hoursInFurnace),
    highestCelsius: highest,
  };
};
