import type { ValueAndSlope } from "../number/solve-increasing";

/** A node of a certificate's table. */
export type TableNode = { readonly x: number; readonly y: number };

/**
 * Piecewise linear through nodes in ascending x (Abramowitz & Stegun, 25.2.2 with two points), constant beyond the ends.
 * A single node is a constant; no nodes, zero. Whether beyond the ends means anything is the caller's to decide. Units:
 * y in its own, slope per unit of x. An x that is not a number gives NaN.
 */
export function interpolate(nodes: readonly TableNode[], x: number): ValueAndSlope {
  const first = nodes[0];
  const last = nodes.at(-1);
  if (!first || !last) return { value: 0, slope: 0 };
  if (Number.isNaN(x)) return { value: x, slope: x };
  if (!(x > first.x)) return { value: first.y, slope: 0 };
  if (x >= last.x) return { value: last.y, slope: 0 };
  let low = 0;
  let high = nodes.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((nodes[middle] as TableNode).x <= x) low = middle;
    else high = middle;
  }
  const a = nodes[low] as TableNode;
  const b = nodes[high] as TableNode;
  const slope = (b.y - a.y) / (b.x - a.x);
  return { value: a.y + slope * (x - a.x), slope };
}
