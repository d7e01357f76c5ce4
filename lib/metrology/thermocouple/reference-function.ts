/**
 * The reference function of one thermocouple type, as published: pieces of the direct function in mV, and the
 * published inverse polynomials, which serve as start values only. To add a type, write its file and
 * enter it in reference-functions.ts.
 */
export type ReferenceFunction = {
  readonly letter: string;
  /** Noble metal: tighter stability criterion, and its own closed alumina sheath beside base metal. */
  readonly isNoble: boolean;
  /** Tungsten-rhenium (C and A): destroyed by air when hot, so refused in a furnace with air in it. */
  readonly isOxidisingInAir: boolean;
  readonly source: string;
  /**
   * Where IEC 60584-1:2013 uses this function: shorter than the function for type K; null when it has no such
   * type.
   */
  readonly iecRange: TemperatureRange | null;
  /**
   * Where the inverse begins, when the function falls before it rises (type B); else it begins with the
   * function.
   */
  readonly inverseFromCelsius?: number;
  /**
   * Ascending, each piece beginning where the one before ends: at most three. At a join the lower piece
   * holds.
   */
  readonly pieces: readonly [Piece] | readonly [Piece, Piece] | readonly [Piece, Piece, Piece];
  /** Where two ranges overlap (R and S), the first that holds the emf is taken. None published: empty. */
  readonly startValues: readonly StartValue[];
};

export type Piece = {
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly millivolt: readonly number[];
  readonly gaussian?: Gaussian;
  /**
   * Below it the terms cancel so far that the polynomial is summed with twice the digits (type T: 9 V to 6
   * mV).
   */
  readonly compensatedBelowCelsius?: number;
};

/** Added to the polynomial: millivolt·exp[perSquareCelsius·(t − centre)²]. Type K above 0 °C. */
export type Gaussian = {
  readonly millivolt: number;
  readonly perSquareCelsius: number;
  readonly centreCelsius: number;
};

export type StartValue = {
  readonly fromMillivolt: number;
  readonly toMillivolt: number;
  readonly celsius: readonly number[];
};

export type TemperatureRange = { readonly fromCelsius: number; readonly toCelsius: number };

/**
 * Range of the direct function in °C, both ends included: as published (NIST SRD 60; each type's file names
 * its own).
 */
export function temperatureRange(reference: ReferenceFunction): TemperatureRange {
  const { fromCelsius } = reference.pieces[0];
  let { toCelsius } = reference.pieces[0];
  for (const piece of reference.pieces) toCelsius = piece.toCelsius;
  return { fromCelsius, toCelsius };
}

/**
 * The piece that holds t in °C (NIST Monograph 175: at a join the lower one), or null outside the range and
 * for a value that is not a number.
 */
export function pieceAt(reference: ReferenceFunction, celsius: number): Piece | null {
  if (!(celsius >= reference.pieces[0].fromCelsius)) return null;
  for (const piece of reference.pieces) if (celsius <= piece.toCelsius) return piece;
  return null;
}

/**
 * The range in words, for a problem's message, as `temperatureRange` has it (source there). Temperatures in
 * °C; no error cases.
 */
export function describeRange(reference: ReferenceFunction): string {
  const { fromCelsius, toCelsius } = temperatureRange(reference);
  return `type ${reference.letter} is defined from ${fromCelsius} °C to ${toCelsius} °C`;
}
