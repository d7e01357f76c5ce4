import { emfsAt } from "./direct-block";
import { pieceEmf } from "./emf";
import { type InversePiece, type InverseTable, solvePiece } from "./inverse-table";
import { pieceSeebeck } from "./seebeck";

/**
 * A first step no longer than this leaves less than 1e-9 °C: the cubic's slope is good to 7e-4 where it is
 * that near, to 2e-6 from −250 °C up.
 */
const LONGEST_STEP_CELSIUS = 1e-6;

/** Room for so many values at a time, used again for each batch. */
export type InverseBatch = {
  readonly which: Int32Array;
  readonly start: Float64Array;
  readonly celsiusPerMicrovolt: Float64Array;
  readonly reached: Float64Array;
};

/**
 * Room for at most `size` values, a multiple of four, as `temperaturesFrom` needs it (source and units
 * there); no error cases.
 */
export function inverseBatch(size: number): InverseBatch {
  return {
    which: new Int32Array(size),
    start: new Float64Array(size),
    celsiusPerMicrovolt: new Float64Array(size),
    reached: new Float64Array(size),
  };
}

/** Piece, start value and dt/dE of each emf, from the cell it lies in. */
function startFromTable(
  table: InverseTable,
  microvolt: Float64Array,
  begin: number,
  count: number,
  batch: InverseBatch,
): void {
  const { firstJoin, secondJoin, origin, cellsPerMicrovolt, shift, cubics } = table;
  const { which, start, celsiusPerMicrovolt } = batch;
  for (let i = 0; i < count; i += 1) {
    const target = microvolt[begin + i] as number;
    // At a join the lower piece holds: an emf that both have belongs to the lower.
    const piece = Number(target > firstJoin) + Number(target > secondJoin);
    const scale = cellsPerMicrovolt[piece] as number;
    const position = (target - (origin[piece] as number)) * scale;
    const cell = position | 0;
    const s = position - cell;
    // A shift, not a product: the engine would have to look for -0, and would guess wrong at each change of
    // piece.
    const at = ((piece << shift) + cell) << 2;
    // Value and slope in one Horner pass.
    const cubic = cubics[at + 3] as number;
    const square = cubic * s + (cubics[at + 2] as number);
    const line = square * s + (cubics[at + 1] as number);
    which[i] = piece;
    start[i] = line * s + (cubics[at] as number);
    celsiusPerMicrovolt[i] = ((cubic * s + square) * s + line) * scale;
  }
}

/**
 * celsius[i] = t in °C with E(t) = microvolt[i] in µV on the direct function (NIST Monograph 175), for count
 * values from `begin` on, which must lie within the table and fit the batch (the caller sees to it): a start
 * value from the table, one Newton step with the table's slope, and more of Newton's method where that step
 * is not short enough (below −250 °C).
 * |t(E(t)) − t| ≤ 1e-9 °C from −200 °C up, ≤ 1e-7 °C below. Two temperatures 1e-7 °C apart share an emf at
 * the join of types R and S at 1664.5 °C and of type B at 630.615 °C: the lower is given. No temperature has
 * an emf in the gap at a join (type J at 760 °C): the join is given.
 */
export function temperaturesFrom(
  table: InverseTable,
  microvolt: Float64Array,
  begin: number,
  count: number,
  batch: InverseBatch,
  celsius: Float64Array,
): void {
  const { block, low, high, pieces } = table;
  const { which, start, celsiusPerMicrovolt, reached } = batch;
  startFromTable(table, microvolt, begin, count, batch);
  emfsAt(block, which, start, reached, 0, count + (-count & 3));
  for (let i = 0; i < count; i += 1) {
    const target = microvolt[begin + i] as number;
    const piece = which[i] as number;
    const step = (target - (reached[i] as number)) * (celsiusPerMicrovolt[i] as number);
    const t = (start[i] as number) + step;
    const isWithin = t >= (low[piece] as number) && t <= (high[piece] as number);
    // Comparisons, not min and max: those cost more than all the rest of this loop.
    celsius[begin + i] =
      isWithin && Math.abs(step) <= LONGEST_STEP_CELSIUS
        ? t
        : refine(pieces[piece] as InversePiece, target, t);
  }
}

/**
 * One more Newton step with the function's own slope; the whole method where that step is not short either.
 * Kept to the piece.
 */
function refine(inverse: InversePiece, microvolt: number, near: number): number {
  const { piece, fromCelsius, toCelsius } = inverse;
  const step = (microvolt - pieceEmf(piece, near)) / pieceSeebeck(piece, near);
  const t = Math.abs(step) <= LONGEST_STEP_CELSIUS ? near + step : solvePiece(inverse, microvolt, near);
  return Math.min(Math.max(t, fromCelsius), toCelsius);
}
