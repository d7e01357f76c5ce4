/** Ascending, each once: those chosen, or all that any of the sensors is ordered at. `stray`: chosen, ordered by none. */
export const chosenSetpoints = (
  sensors: readonly { readonly orderedCelsius: readonly number[] }[],
  chosen: readonly number[],
): { readonly celsius: readonly number[]; readonly stray: number | null } => {
  const ordered = new Set(sensors.flatMap((sensor) => sensor.orderedCelsius));
  const wanted = chosen.length > 0 ? [...new Set(chosen)] : [...ordered];
  return {
    celsius: wanted.toSorted((a, b) => a - b),
    stray: wanted.find((celsius) => !ordered.has(celsius)) ?? null,
  };
};
