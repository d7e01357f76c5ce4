import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { OrderOffers } from "@/lib/views/quotation/order-offers";
import { RecordAnswerForm } from "./offer-forms";

type Offer = OrderOffers["offers"][number];

const marks: Readonly<Record<Offer["standing"], { state: string; label: string }>> = {
  agreed: { state: "pass", label: "Agreed" },
  declined: { state: "fail", label: "Declined" },
  changed: { state: "exception", label: "Order changed since" },
  replaced: { state: "superseded", label: "Replaced" },
  over: { state: "out-of-date", label: "Over" },
  open: { state: "waiting", label: "Waiting for the customer" },
};
const ways: Readonly<Record<string, string>> = {
  link: "by link",
  portal: "in the portal",
  desk: "to the desk",
};

const Answer = ({ offer, mayRecord }: { readonly offer: Offer; readonly mayRecord: boolean }) => {
  const { answer, standing } = offer;
  if (answer)
    return (
      <>
        <Timestamp at={answer.at} />, {answer.by}, {ways[answer.cameBy]}
        {answer.purchaseOrder ? `, purchase order ${answer.purchaseOrder}` : ""}
        {answer.remark ? <div className="lines">{answer.remark}</div> : null}
      </>
    );
  return standing === "open" && mayRecord ? <RecordAnswerForm offer={offer} /> : "none";
};

/** Each offer with its answer: who, when, how it came. */
export function OfferTable({ view }: { readonly view: OrderOffers }) {
  return (
    <DataTable
      caption="Offers"
      captionUnseen
      columns={[
        { key: "number", header: "Offer" },
        { key: "made", header: "Made" },
        { key: "until", header: "Open until" },
        { key: "total", header: "Sum", align: "number" },
        { key: "standing", header: "State" },
        { key: "answer", header: "Answer" },
      ]}
      rows={view.offers.map((offer) => ({
        key: offer.number,
        cells: {
          number: offer.number,
          made: <Timestamp at={offer.madeAt} />,
          until: offer.validUntil,
          total: offer.total,
          standing: <StateMark {...marks[offer.standing]} />,
          answer: <Answer offer={offer} mayRecord={view.mayOffer} />,
        },
      }))}
      empty={
        <EmptyState title="Nothing was offered yet">An order can be accepted without an offer.</EmptyState>
      }
    />
  );
}
