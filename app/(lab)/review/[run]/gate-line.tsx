import Link from "next/link";
import type { ReviewRunPage } from "@/lib/views/review-run";

const warned = (count: number): string =>
  count === 0 ? "without a warning" : count === 1 ? "with 1 warning" : `with ${count} warnings`;

/** What the gate only warned of stands out nowhere else: who signs is told how much, and where it is read. */
export function GateLine({ review: { gate, number } }: { readonly review: ReviewRunPage }) {
  if (!gate) return null;
  return (
    <p>
      Gate: <Link href={`/runs/${number}/gate`}>passed {warned(gate.warnings)}</Link>
      {gate.setAside > 0 ? `, ${gate.setAside} set aside with a reason` : ""}.
    </p>
  );
}
