import { Hash } from "@/app/_ui/hash";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { ReviewRunPage } from "@/lib/views/review-run";

type Lot = ReviewRunPage["lots"][number];

const OneLot = ({ run, lot }: { readonly run: string; readonly lot: Lot }) => (
  <div className="stack">
    <p>
      {lot.tags.length > 0 ? `${lot.tags.join(", ")} (${lot.customer}), ` : ""}
      {lot.part}
    </p>
    {lot.draftHash ? (
      <div className="lines">
        <a href={`/api/review/${run}/lots/${lot.lineId}/draft`} target="_blank" rel="noreferrer">
          Draft of the lot’s certificate (PDF)
        </a>
        <Hash value={lot.draftHash} label="Content hash" />
      </div>
    ) : null}
    {lot.findings.map((finding) => (
      <StateMark key={finding} state="exception" label={finding} />
    ))}
    {lot.obstacle === "" ? null : (
      <Notice kind="caution" title="This certificate cannot be signed yet">
        {lot.obstacle}
      </Notice>
    )}
    {lot.leftOut.length > 0 ? (
      <Notice kind="info" title="Of this lot, and not on it">
        <ul className="list">
          {lot.leftOut.map(({ tag, why }) => (
            <li key={tag}>
              {tag}: {why}
            </li>
          ))}
        </ul>
      </Notice>
    ) : null}
  </div>
);

/** What the order asks for one certificate of: its averages and spreads are seen here before they are signed. */
export function Lots({ review }: { readonly review: ReviewRunPage }) {
  if (review.lots.length === 0) return null;
  return (
    <Section
      title="Certificates for a lot"
      id="lots"
      note="One for each run: sensors of the lot that are measured in another run stand on a further part."
    >
      {review.lots.map((lot) => (
        <OneLot key={lot.lineId} run={review.number} lot={lot} />
      ))}
    </Section>
  );
}
