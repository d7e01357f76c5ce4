import { complementaryErrorFunction } from "./error-function";
import { exponential } from "./exponential";
import { logarithm } from "./logarithm";
import { type RandomStream, refill, uniform } from "./random";

const LAYERS = 256;
/** Where the tail begins, for 256 layers of equal area under e^(−x²/2): the root of the equation that closes them. */
const TAIL = 3.654152885361009;
const SQRT_HALF_PI = 1.2533141373155003;
const SQRT_2 = Math.sqrt(2);
const TWO_TO_28 = 268435456;
const TWO_TO_MINUS_51 = 1 / 2251799813685248;

const density = (x: number): number => exponential(-0.5 * x * x);

// Built by this folder's own functions, so that the tables, and with them every draw, have the same bits everywhere.
const edges = new Float64Array(LAYERS + 1);
const heights = new Float64Array(LAYERS + 1);
const inside = new Float64Array(LAYERS);
const area = TAIL * density(TAIL) + SQRT_HALF_PI * complementaryErrorFunction(TAIL / SQRT_2);
// Layer 0 is the box under the tail's height plus the tail: as wide as if it were a box of the same area.
edges[0] = area / density(TAIL);
edges[1] = TAIL;
for (let i = 1; i < LAYERS - 1; i += 1) {
  const edge = edges[i] as number;
  edges[i + 1] = Math.sqrt(-2 * logarithm(area / edge + density(edge)));
}
for (let i = 0; i < LAYERS; i += 1) inside[i] = (edges[i + 1] as number) / (edges[i] as number);
for (let i = 1; i <= LAYERS; i += 1) heights[i] = density(edges[i] as number);

/**
 * The next draw from the standard normal distribution, N(0, 1); no unit, no error cases.
 *
 * Ziggurat of 256 layers (G. Marsaglia and W. W. Tsang, J. Stat. Softw. 5 (2000) no. 8), with the layer from 8 bits that the
 * place within it does not use (the flaw that J. A. Doornik found in the original, 2005; both from memory). Exact: a
 * rejection method, no approximation of the quantile. JCGM 101:2008, 6.4.7.4 leaves the method free.
 */
export function standardNormal(stream: RandomStream): number {
  if (stream.next === stream.words.length) refill(stream);
  const first = stream.words[stream.next] as number;
  const second = stream.words[stream.next + 1] as number;
  stream.next += 2;
  const layer = first & 255;
  // Odd multiples of 2^−52: symmetric about zero, which is never met.
  const place = ((first >> 8) * TWO_TO_28 + (second >>> 4) + 0.5) * TWO_TO_MINUS_51;
  const x = place * (edges[layer] as number);
  if (Math.abs(place) < (inside[layer] as number)) return x;
  return beyond(stream, layer, x);
}

/**
 * Adds Σ amountₖ·(the next standard normal draw) to each of values[from … to − 1]: the draws of `standardNormal` in the same
 * order (its source holds here), one for each amount and value. Amounts and values in one unit; no error cases. Its own loop, so that the sum and
 * the place in the supply of words stay in registers: draws are what a propagation spends its time on.
 */
export function addNormals(
  stream: RandomStream,
  amounts: Float64Array,
  values: Float64Array,
  from: number,
  to: number,
): void {
  const { words } = stream;
  const supply = words.length;
  let { next } = stream;
  for (let i = from; i < to; i += 1) {
    let sum = 0;
    for (let k = 0; k < amounts.length; k += 1) {
      if (next === supply) {
        refill(stream);
        next = 0;
      }
      const first = words[next] as number;
      const second = words[next + 1] as number;
      next += 2;
      const layer = first & 255;
      const place = ((first >> 8) * TWO_TO_28 + (second >>> 4) + 0.5) * TWO_TO_MINUS_51;
      let x = place * (edges[layer] as number);
      if (Math.abs(place) >= (inside[layer] as number)) {
        stream.next = next;
        x = beyond(stream, layer, x);
        next = stream.next;
      }
      sum += (amounts[k] as number) * x;
    }
    values[i] = (values[i] as number) + sum;
  }
  stream.next = next;
}

/** About one draw in a hundred: in the tail, or in the part of a layer that the curve cuts. */
function beyond(stream: RandomStream, layer: number, x: number): number {
  if (layer === 0) return x < 0 ? -tail(stream) : tail(stream);
  const low = heights[layer] as number;
  const height = low + uniform(stream) * ((heights[layer + 1] as number) - low);
  return height < density(x) ? x : standardNormal(stream);
}

/** |x| beyond the tail's begin (G. Marsaglia's method of 1964, as in the same paper). */
function tail(stream: RandomStream): number {
  for (;;) {
    // 1 − u lies in (0, 1], where the logarithm is finite.
    const x = -logarithm(1 - uniform(stream)) / TAIL;
    const y = -logarithm(1 - uniform(stream));
    if (y + y >= x * x) return TAIL + x;
  }
}
