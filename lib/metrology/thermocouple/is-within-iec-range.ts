import type { ReferenceFunction } from "./reference-function";

/**
 * Whether IEC 60584-1:2013 uses the function at t (°C, both ends included). Type K: the function of NIST SRD
 * 60 goes to 1372 °C, the standard's to 1300 °C, so that a result above it must not be called one of IEC
 * 60584-1. False for types that the standard does not have (Au/Pt, Pt/Pd: IEC 62460) and for a value that is
 * not a number.
 */
export function isWithinIecRange(reference: ReferenceFunction, celsius: number): boolean {
  const range = reference.iecRange;
  return range !== null && celsius >= range.fromCelsius && celsius <= range.toCelsius;
}
