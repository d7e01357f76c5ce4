import { polynomial } from "../number/polynomial";
import { solveIncreasing } from "../number/solve-increasing";
import { type DirectBlock, directBlock } from "./direct-block";
import { pieceEmf } from "./emf";
import type { Piece, ReferenceFunction } from "./reference-function";
import { pieceSeebeck } from "./seebeck";

/** Well below the last digit anyone can measure, well above the noise of float64 in E(t). */
const TOLERANCE_CELSIUS = 1e-11;

/**
 * So much beyond the emf of an end still belongs to the end: rounding makes E(t) of types E and T uncertain
 * by some 1e-8 µV at −270 °C, and a temperature just inside must find its way back.
 */
const END_NOISE_MICROVOLT = 1e-7;

/** Cells of equal emf a piece: the cubics of every type miss by less than 1e-6 °C from −250 °C up. */
const CELLS = 2000;

/** Room for the cells of a piece and the one of its end. */
const SHIFT = 11;

/** Where a piece can be inverted: all of it, but for type B's foot, where the emf falls before it rises. */
export type InversePiece = {
  readonly piece: Piece;
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly fromMicrovolt: number;
  readonly toMicrovolt: number;
};

export type InverseTable = {
  readonly block: DirectBlock;
  readonly pieces: readonly InversePiece[];
  readonly fromMicrovolt: number;
  readonly toMicrovolt: number;
  /** emf in µV where the second and the third piece begin; the end of the table where there is none. */
  readonly firstJoin: number;
  readonly secondJoin: number;
  /** One number a piece: its ends in °C, the emf in µV where it begins, its cells per µV. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly origin: Float64Array;
  readonly cellsPerMicrovolt: Float64Array;
  /**
   * Cells of piece p are numbered from p·2^shift on. A field, since a name from another file is slow in a hot
   * loop.
   */
  readonly shift: number;
  /**
   * Four numbers a cell, t = a₀ + a₁·s + a₂·s² + a₃·s³ in °C, s from 0 to 1; one cell more a piece, for its
   * very end.
   */
  readonly cubics: Float64Array;
};

function startValue(reference: ReferenceFunction, microvolt: number): number {
  const millivolt = microvolt / 1000;
  for (const range of reference.startValues) {
    if (millivolt >= range.fromMillivolt && millivolt <= range.toMillivolt) {
      return polynomial(range.celsius, millivolt);
    }
  }
  return Number.NaN;
}

/** t in °C with E(t) = emf in µV on one piece, by Newton's method on the direct function. The emf lies on the piece;
 * the caller sees to that. */
export function solvePiece(inverse: InversePiece, microvolt: number, start: number): number {
  const { piece, fromCelsius, toCelsius } = inverse;
  return solveIncreasing(
    (celsius) => ({ value: pieceEmf(piece, celsius), slope: pieceSeebeck(piece, celsius) }),
    microvolt,
    { low: fromCelsius, high: toCelsius },
    start,
    TOLERANCE_CELSIUS,
  );
}

function inversePiece(reference: ReferenceFunction, piece: Piece): InversePiece {
  const fromCelsius = Math.max(piece.fromCelsius, reference.inverseFromCelsius ?? piece.fromCelsius);
  return {
    piece,
    fromCelsius,
    toCelsius: piece.toCelsius,
    fromMicrovolt: pieceEmf(piece, fromCelsius),
    toMicrovolt: pieceEmf(piece, piece.toCelsius),
  };
}

/** Writes a piece's cubics: Hermite's, through t and dt/dE = 1/S at both ends of each cell. */
function writeCubics(reference: ReferenceFunction, inverse: InversePiece, cubics: Float64Array): void {
  const { piece, fromMicrovolt, toMicrovolt } = inverse;
  const width = (toMicrovolt - fromMicrovolt) / CELLS;
  let celsius = inverse.fromCelsius;
  let rate = width / pieceSeebeck(piece, celsius);
  for (let cell = 0; cell < CELLS; cell += 1) {
    const microvolt = fromMicrovolt + (cell + 1) * width;
    const isLast = cell === CELLS - 1;
    const next = isLast
      ? inverse.toCelsius
      : solvePiece(inverse, microvolt, startValue(reference, microvolt));
    const nextRate = width / pieceSeebeck(piece, next);
    const rise = next - celsius;
    cubics.set([celsius, rate, 3 * rise - 2 * rate - nextRate, rate + nextRate - 2 * rise], 4 * cell);
    celsius = next;
    rate = nextRate;
  }
  cubics.set([celsius, rate, 0, 0], 4 * CELLS);
}

function makeTable(reference: ReferenceFunction): InverseTable {
  const pieces = reference.pieces.map((piece) => inversePiece(reference, piece));
  const size = 4 << SHIFT;
  const cubics = new Float64Array(size * pieces.length);
  pieces.forEach((piece, p) => {
    writeCubics(reference, piece, cubics.subarray(p * size, (p + 1) * size));
  });
  const starts = pieces.map((piece) => piece.fromMicrovolt);
  const ends = pieces.map((piece) => piece.toMicrovolt);
  const joins = ends.slice(0, -1);
  const toMicrovolt = Math.max(...ends) + END_NOISE_MICROVOLT;
  return {
    block: directBlock(reference),
    pieces,
    fromMicrovolt: Math.min(...starts) - END_NOISE_MICROVOLT,
    toMicrovolt,
    firstJoin: joins[0] ?? toMicrovolt,
    secondJoin: joins[1] ?? toMicrovolt,
    low: Float64Array.from(pieces, (piece) => piece.fromCelsius),
    high: Float64Array.from(pieces, (piece) => piece.toCelsius),
    origin: Float64Array.from(starts),
    cellsPerMicrovolt: Float64Array.from(
      pieces,
      (piece) => CELLS / (piece.toMicrovolt - piece.fromMicrovolt),
    ),
    shift: SHIFT,
    cubics,
  };
}

const tables = new WeakMap<ReferenceFunction, InverseTable>();

/**
 * Start values for the inverse of a reference function, made on the direct function when first asked for and
 * kept with it. emf in µV, t in °C. The published inverse polynomials (NIST SRD 60) miss by up to 0.06 °C:
 * they only start the search for the ends of the cells. No error cases: every published function has its
 * table.
 */
export function inverseTable(reference: ReferenceFunction): InverseTable {
  const known = tables.get(reference);
  if (known) return known;
  const table = makeTable(reference);
  tables.set(reference, table);
  return table;
}
