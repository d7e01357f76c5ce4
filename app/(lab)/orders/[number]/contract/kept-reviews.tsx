import { Disclosure } from "@/app/_ui/disclosure";
import { FieldList } from "@/app/_ui/field-list";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { OrderContract } from "@/lib/views/order/contract";
import { ExpectedStatements } from "../expected-statements";
import { SnapshotTable } from "./snapshot-table";

const Review = ({ review }: { readonly review: OrderContract["reviews"][number] }) => (
  <article className="stack">
    <h3>
      Review {review.sequence}, {review.isChange ? "of a change" : "before acceptance"}
    </h3>
    <p className="quiet">
      <Timestamp at={review.at} />, {review.who}
    </p>
    <FieldList
      columns
      items={review.answers.map(({ title, clause, answer, remark }) => ({
        label: `${title} (${clause})`,
        value: remark ? `${answer}. ${remark}` : answer,
      }))}
    />
    {review.told.length > 0 ? <p>The customer was told: {review.told.join(" ")}</p> : null}
    {review.capability.length > 0 ? (
      <Disclosure summary="What the platform answered then">
        <ExpectedStatements points={review.capability} />
      </Disclosure>
    ) : null}
  </article>
);

/** Reviews and changes as they were made, kept beside the order (ISO/IEC 17025:2017, 7.1.6 and 7.1.8). */
export function KeptReviews({ contract }: { readonly contract: OrderContract }) {
  const { reviews, changes } = contract;
  if (reviews.length === 0 && changes.length === 0) return null;
  return (
    <Section title="Reviews and changes" id="reviews">
      {changes.map((change) => (
        <article key={change.sequence} className="stack">
          <h3>Change {change.sequence}</h3>
          <p>
            {change.reason}{" "}
            <span className="quiet">
              Agreed with {change.agreedWith}; <Timestamp at={change.at} />, {change.who}
            </span>
          </p>
          <SnapshotTable
            caption={`What change ${change.sequence} changed.`}
            differences={change.differences}
          />
        </article>
      ))}
      {reviews.map((review) => (
        <Review key={review.sequence} review={review} />
      ))}
    </Section>
  );
}
