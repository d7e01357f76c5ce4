import Link from "next/link";
import type { PortalWaiting } from "@/lib/views/portal/waiting";

/** What the laboratory waits for the customer with, each a link to where it is answered. */
export function WaitingList({ waiting }: { readonly waiting: PortalWaiting }) {
  return (
    <ul className="stack plain-list">
      {waiting.offers.map(({ number, orderNumber, validUntil }) => (
        <li key={number}>
          <Link href={`/portal/orders/${orderNumber}/offer`}>Answer our offer {number}</Link> for order{" "}
          {orderNumber}, open until {validUntil}
        </li>
      ))}
      {waiting.questions.map(({ id, orderNumber, askedOn }) => (
        <li key={id}>
          <Link href={`/portal/orders/${orderNumber}#waiting`}>Answer a question about {orderNumber}</Link>,
          asked {askedOn}
        </li>
      ))}
    </ul>
  );
}
