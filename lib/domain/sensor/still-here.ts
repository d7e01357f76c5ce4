import { serialKey } from "./serials";

/** A sensor of the same customer that has not left the house. */
export type SensorHere = { readonly serial: string; readonly tag: string; readonly typeLetter: string };

/**
 * The label under which a sensor of this serial and type is in the house already. Two sensors may bear one serial, so it
 * stops nothing: whoever takes it in sees it, and looks whether the first one was handed back without being written down.
 */
export const stillHereAs = (
  known: readonly SensorHere[],
  came: { readonly serial: string; readonly typeLetter: string },
): string | null =>
  known.find(
    ({ serial, typeLetter }) =>
      typeLetter === came.typeLetter && serialKey(serial) === serialKey(came.serial),
  )?.tag ?? null;
