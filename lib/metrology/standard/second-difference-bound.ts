import type { TableNode } from "../comparison/interpolate";

/**
 * Half-width of the error of a straight line between two nodes: |f″|/2·(x − a)(b − x) (Abramowitz & Stegun, 25.2.2 with
 * 25.2.3), f″/2 taken as the larger second divided difference |f[·,·,·]| that involves both a and b. Zero at the nodes,
 * h²/8·|f″| midway. For a cubic through the nodes it serves as a bound too. Unit: that of y. Nodes ascend in x; beyond
 * the ends, and with fewer than three nodes (which say nothing of a curvature), 0: the caller refuses both.
 */
export function secondDifferenceBound(nodes: readonly TableNode[], x: number): number {
  const right = nodes.findIndex((node) => node.x >= x);
  if (right < 1) return Number.isNaN(x) ? x : 0;
  const a = (nodes[right - 1] as TableNode).x;
  const b = (nodes[right] as TableNode).x;
  let largest = 0;
  for (let first = Math.max(0, right - 2); first < right && first + 2 < nodes.length; first += 1) {
    largest = Math.max(largest, Math.abs(secondDividedDifference(nodes.slice(first, first + 3))));
  }
  return largest * (x - a) * (b - x);
}

/** f[x₀, x₁, x₂] = (f[x₁, x₂] − f[x₀, x₁])/(x₂ − x₀). */
function secondDividedDifference(three: readonly TableNode[]): number {
  const [p, q, r] = three as [TableNode, TableNode, TableNode];
  return ((r.y - q.y) / (r.x - q.x) - (q.y - p.y) / (q.x - p.x)) / (r.x - p.x);
}
