/** What a sensor was called from a moment on; null = from when it was taken in. */
export type Naming = { readonly sensorId: string; readonly serial: string; readonly since: Date | null };

const lastBefore = (namings: readonly Naming[], at: Date | null): string | null =>
  namings
    .filter(({ since }) => since === null || at === null || since <= at)
    .toSorted((one, other) => +(one.since ?? 0) - +(other.since ?? 0))
    .at(-1)?.serial ?? null;

/**
 * What is called now what was called by this serial when something was said of it: a certificate that followed may have
 * corrected it since. Several where several bore it; the serial itself where none did, or one that kept it.
 */
export const namesSince = (namings: readonly Naming[], serial: string, at: Date): readonly string[] => {
  const bySensor = new Map<string, Naming[]>();
  for (const one of namings) bySensor.set(one.sensorId, [...(bySensor.get(one.sensorId) ?? []), one]);
  const now = [...bySensor.values()]
    .filter((own) => lastBefore(own, at) === serial)
    .flatMap((own) => lastBefore(own, null) ?? []);
  return now.length > 0 ? [...new Set(now)] : [serial];
};
