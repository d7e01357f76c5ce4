/**
 * The reference function of one letter type, as published: pieces of the direct function in mV, and the
 * published inverse polynomials, which serve as start values only. To add a type, write its file and
 * enter it in reference-functions.ts.
 */
export type ReferenceFunction = {
  readonly letter: string;
  /** Platinum-based: tighter stability criterion, and its own closed alumina sheath beside base metal. */
  readonly isNoble: boolean;
  readonly source: string;
  /** Ascending, each piece beginning where the one before ends. At a join the lower piece holds. */
  readonly pieces: readonly Piece[];
  /** Where two ranges overlap (R and S), the first that holds the emf is taken. */
  readonly startValues: readonly StartValue[];
};

export type Piece = {
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly millivolt: readonly number[];
  /** Added to the polynomial: millivolt·exp[perSquareCelsius·(t − centre)²]. Type K above 0 °C. */
  readonly gaussian?: {
    readonly millivolt: number;
    readonly perSquareCelsius: number;
    readonly centreCelsius: number;
  };
};

export type StartValue = {
  readonly fromMillivolt: number;
  readonly toMillivolt: number;
  readonly celsius: readonly number[];
};

export type TemperatureRange = { readonly fromCelsius: number; readonly toCelsius: number };

export function temperatureRange(reference: ReferenceFunction): TemperatureRange {
  return {
    fromCelsius: reference.pieces[0]?.fromCelsius ?? Number.NaN,
    toCelsius: reference.pieces.at(-1)?.toCelsius ?? Number.NaN,
  };
}

/** The piece that holds t, or null outside the range or for a value that is not a number. */
export function pieceAt(reference: ReferenceFunction, celsius: number): Piece | null {
  const first = reference.pieces[0];
  if (!first || !(celsius >= first.fromCelsius)) return null;
  return reference.pieces.find((piece) => celsius <= piece.toCelsius) ?? null;
}

export function describeRange(reference: ReferenceFunction): string {
  const { fromCelsius, toCelsius } = temperatureRange(reference);
  return `type ${reference.letter} is defined from ${fromCelsius} °C to ${toCelsius} °C`;
}
