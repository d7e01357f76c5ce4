/** From this length on a sample tells where to cut. */
const LARGE = 4096;
/** Values in the sample, and how many of them the cut lies beyond where place k is expected. */
const SAMPLE = 512;
const MARGIN = 24;

/**
 * Rearranges values[from … to − 1] so that what belongs at place k, were they sorted, is there, nothing greater before it and
 * nothing smaller behind it: C. A. R. Hoare's FIND (Comm. ACM 4 (1961) 321). In long lists the cut is taken from a sorted
 * sample, a little beyond k, as R. W. Floyd and R. L. Rivest do (Comm. ACM 18 (1975) 165; both from memory): one pass over all
 * and little more. Which cut is taken changes the time and never the result.
 *
 * Values in any unit, no NaN among them (the caller's to check: NaN has no place in an order); from ≤ k < to.
 */
export function select(values: Float64Array, k: number, from = 0, to = values.length): void {
  let left = from;
  let right = to - 1;
  while (left < right) {
    const pivot =
      right - left < LARGE
        ? medianOfThree(values, left, (left + right) >>> 1, right)
        : fromSample(values, k, left, right);
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] as number) < pivot) i += 1;
      while ((values[j] as number) > pivot) j -= 1;
      if (i <= j) {
        const swap = values[i] as number;
        values[i] = values[j] as number;
        values[j] = swap;
        i += 1;
        j -= 1;
      }
    }
    // Between j and i everything equals the pivot.
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else return;
  }
}

function medianOfThree(values: Float64Array, a: number, b: number, c: number): number {
  const [x, y, z] = [values[a] as number, values[b] as number, values[c] as number];
  return Math.max(Math.min(x, y), Math.min(Math.max(x, y), z));
}

/** A value of the list that most likely lies beyond place k, seen from the nearer end, and not far. */
function fromSample(values: Float64Array, k: number, left: number, right: number): number {
  const step = (right - left) / (SAMPLE - 1);
  const sample = new Float64Array(SAMPLE);
  for (let n = 0; n < SAMPLE; n += 1) sample[n] = values[left + Math.floor(n * step)] as number;
  sample.sort();
  const expected = Math.floor((k - left) / step);
  const isInLowerHalf = expected < SAMPLE / 2;
  const rank = isInLowerHalf ? expected + MARGIN : expected - MARGIN;
  return sample[rank] as number;
}
