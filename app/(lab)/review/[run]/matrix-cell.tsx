import Link from "next/link";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import type { ReviewCell } from "@/lib/views/review-cell";

const openings = {
  opened: { sign: "✓", words: "opened by you" },
  exception: { sign: "!", words: "must be opened: it stands out" },
  lot: { sign: "?", words: "must be opened: drawn by lot" },
} as const;

/** One sign before the number: what is asked of whoever reviews, in words for who does not see it. */
function OpeningSign({ opening }: { readonly opening: ReviewCell["opening"] }) {
  if (!opening) return null;
  const { sign, words } = openings[opening];
  return (
    <span data-opening={opening} title={words}>
      <span aria-hidden="true">{sign}</span>
      <span className="unseen">{words}</span>{" "}
    </span>
  );
}

function Difference({ difference }: Pick<ReviewCell, "difference">) {
  if (!difference) return <span className="quiet">first here</span>;
  if (!difference.isBeyondU)
    return (
      <span className="quiet">
        Δ <Quantity value={difference.celsius} />
      </span>
    );
  return (
    <StateMark state="exception" label={`Δ ${difference.celsius.replace("-", "−")}, ${difference.ratio} U`} />
  );
}

const remarks = (count: number): string => (count === 1 ? "1 remark" : `${count} remarks`);

/** Error ± U, and a line each for what is said of it: read down and across. */
export function MatrixCell({ cell }: { readonly cell: ReviewCell | null }) {
  if (!cell) return <span className="quiet">none</span>;
  const isMeasured = cell.state === "measured";
  return (
    <div className="lines">
      <div>
        <OpeningSign opening={cell.opening} />
        <Link href={cell.href} prefetch={false} data-step {...(isMeasured ? {} : { title: cell.reason })}>
          {isMeasured ? (
            <Quantity value={cell.errorCelsius} uncertainty={cell.expandedCelsius} />
          ) : (
            <StateMark state={cell.state} />
          )}
        </Link>
      </div>
      {cell.conformity === "no-statement" ? null : <StateMark state={cell.conformity} />}
      {cell.isOutsideScope ? <StateMark state="outside-scope" /> : null}
      {isMeasured ? <Difference difference={cell.difference} /> : null}
      {cell.dominant === "" ? null : (
        <span className="quiet">
          <span className="unseen">mostly </span>
          {cell.dominant}
        </span>
      )}
      {cell.openRemarks > 0 ? <StateMark state="exception" label={remarks(cell.openRemarks)} /> : null}
    </div>
  );
}
