import type { ValueAndSlope } from "./solve-increasing";

type Node = { readonly x: number; readonly y: number };

/**
 * Piecewise cubic through nodes that never overshoots: between two nodes it stays between their values, and extremes
 * stand at nodes only. M. Steffen, Astron. Astrophys. 239 (1990) 443 (from memory). Nodes ascend strictly in x; one
 * node is a constant; beyond the ends constant (whether that means anything is the caller's to decide); no nodes: NaN.
 * Units: y in its own, slope per unit of x.
 */
export function monotoneCubic(nodes: readonly Node[], x: number): ValueAndSlope {
  if (Number.isNaN(x)) return { value: x, slope: x };
  const right = nodes.findIndex((node) => node.x > x);
  if (right < 1) {
    const end = right === 0 ? nodes[0] : nodes.at(-1);
    const isLastNode = end !== undefined && nodes.length > 1 && x === end.x;
    return { value: end?.y ?? Number.NaN, slope: isLastNode ? slopeAtNode(nodes, nodes.length - 1) : 0 };
  }
  const a = nodes[right - 1] as Node;
  const b = nodes[right] as Node;
  const h = b.x - a.x;
  const chord = (b.y - a.y) / h;
  const [da, db] = [slopeAtNode(nodes, right - 1), slopeAtNode(nodes, right)];
  const cube = (da + db - 2 * chord) / (h * h);
  const square = (3 * chord - 2 * da - db) / h;
  const d = x - a.x;
  return { value: a.y + d * (da + d * (square + d * cube)), slope: da + d * (2 * square + 3 * d * cube) };
}

/** Steffen's slope: that of the parabola through three nodes, held below twice the smaller chord, 0 at an extreme. */
function slopeAtNode(nodes: readonly Node[], i: number): number {
  const before = chordOf(nodes, i - 1);
  const after = chordOf(nodes, i);
  if (before && after) {
    const parabola =
      (before.slope * after.length + after.slope * before.length) / (before.length + after.length);
    const limit = Math.min(Math.abs(before.slope), Math.abs(after.slope), Math.abs(parabola) / 2);
    return (Math.sign(before.slope) + Math.sign(after.slope)) * limit;
  }
  return endSlope(after ?? (before as Chord), chordOf(nodes, after ? i + 1 : i - 2));
}

type Chord = { readonly length: number; readonly slope: number };

function chordOf(nodes: readonly Node[], i: number): Chord | null {
  const a = nodes[i];
  const b = nodes[i + 1];
  return a && b ? { length: b.x - a.x, slope: (b.y - a.y) / (b.x - a.x) } : null;
}

function endSlope(own: Chord, next: Chord | null): number {
  if (!next) return own.slope;
  const share = own.length / (own.length + next.length);
  const parabola = own.slope * (1 + share) - next.slope * share;
  if (parabola * own.slope <= 0) return 0;
  return Math.abs(parabola) > 2 * Math.abs(own.slope) ? 2 * own.slope : parabola;
}
