import { type DirectBlock, emfsAt } from "./direct-block";
import { INVERSE_CELLS, type InversePiece, type InverseTable, solvePiece } from "./inverse-table";

/** A first step no longer than this leaves less than 1e-10 °C: the cubic's slope is good to 1e-4 where it is that near. */
const LONGEST_STEP_CELSIUS = 1e-6;

/** Room for so many values at a time, used again for each batch. */
export type InverseBatch = {
  readonly which: Int32Array;
  readonly start: Float64Array;
  readonly celsiusPerMicrovolt: Float64Array;
  readonly microvolt: Float64Array;
};

/** Room for at most `size` values, a multiple of four. */
export function inverseBatch(size: number): InverseBatch {
  return {
    which: new Int32Array(size),
    start: new Float64Array(size),
    celsiusPerMicrovolt: new Float64Array(size),
    microvolt: new Float64Array(size),
  };
}

/** Piece, start value and dt/dE of each emf, from the cell it lies in. */
function startFromTable(table: InverseTable, microvolt: Float64Array, batch: InverseBatch): void {
  const { firstJoin, secondJoin, origin, cellsPerMicrovolt, cubics } = table;
  const { which, start, celsiusPerMicrovolt } = batch;
  for (let i = 0; i < microvolt.length; i += 1) {
    const target = microvolt[i] as number;
    // At a join the lower piece holds: an emf that both have belongs to the lower.
    const piece = Number(target > firstJoin) + Number(target > secondJoin);
    const scale = cellsPerMicrovolt[piece] as number;
    const position = (target - (origin[piece] as number)) * scale;
    const cell = position | 0;
    const s = position - cell;
    const at = (cell + piece * (INVERSE_CELLS + 1)) << 2;
    const a1 = cubics[at + 1] as number;
    const a2 = cubics[at + 2] as number;
    const a3 = cubics[at + 3] as number;
    which[i] = piece;
    start[i] = ((a3 * s + a2) * s + a1) * s + (cubics[at] as number);
    celsiusPerMicrovolt[i] = ((3 * a3 * s + 2 * a2) * s + a1) * scale;
  }
}

/**
 * celsius[i] = t in °C with E(t) = microvolt[i] in µV on the direct function (NIST Monograph 175), for all of microvolt,
 * which must lie within the table and not exceed the batch: a start value from the table, one Newton step with
 * the table's slope, and the whole of Newton's method where that step is not short enough (below −200 °C).
 * |t(E(t)) − t| ≤ 1e-9 °C from −200 °C up, ≤ 1e-7 °C below. Two temperatures 1e-7 °C apart share an emf at the join of types R
 * and S at 1664.5 °C and of type B at 630.615 °C: the lower is given. No temperature has an emf in the gap at a join (type J at
 * 760 °C): the join is given.
 */
export function temperaturesFrom(
  table: InverseTable,
  block: DirectBlock,
  microvolt: Float64Array,
  batch: InverseBatch,
  celsius: Float64Array,
): void {
  startFromTable(table, microvolt, batch);
  emfsAt(block, batch.which, batch.start, batch.microvolt, microvolt.length);
  for (let i = 0; i < microvolt.length; i += 1) {
    const target = microvolt[i] as number;
    const piece = batch.which[i] as number;
    const start = batch.start[i] as number;
    const step = (target - (batch.microvolt[i] as number)) * (batch.celsiusPerMicrovolt[i] as number);
    if (Math.abs(step) <= LONGEST_STEP_CELSIUS) {
      const low = table.low[piece] as number;
      const high = table.high[piece] as number;
      const t = start + step;
      celsius[i] = Math.min(Math.max(t, low), high);
    } else {
      celsius[i] = solvePiece(table.pieces[piece] as InversePiece, target, start);
    }
  }
}
