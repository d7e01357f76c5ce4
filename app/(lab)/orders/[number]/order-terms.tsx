import { FieldList } from "@/app/_ui/field-list";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { OrderPage } from "@/lib/views/order/order";
import type { OrderReturnAddress } from "@/lib/views/order/return-address";
import { ReturnAddressLine } from "./return-address";

const agreementOf = (order: OrderPage): string =>
  [order.agreedBy && `by ${order.agreedBy}`, order.agreedOn && `on ${order.agreedOn}`]
    .filter(Boolean)
    .join(" ");

const By = ({ at, who }: { readonly at: string; readonly who: string }) => (
  <>
    <Timestamp at={at} />, {who}
  </>
);

type Props = { readonly order: OrderPage; readonly returnTo: OrderReturnAddress };

export function OrderTerms({ order, returnTo }: Props) {
  const hasRule = order.agreedBy !== "" || order.agreedOn !== "";
  return (
    <Section title="Terms" id="terms">
      <FieldList
        columns
        items={[
          { label: "Decision rule", value: order.rule },
          ...(hasRule ? [{ label: "Rule agreed", value: agreementOf(order) }] : []),
          ...(order.isExpress ? [{ label: "Urgency", value: order.urgency }] : []),
          ...(order.ruleSetPhrases.length > 0 ? [{ label: "Rule set", value: order.ruleSet }] : []),
          { label: "Digits of U", value: order.uncertaintyDigits === 1 ? "One" : "Two" },
          { label: "Sensors go back to", value: <ReturnAddressLine to={returnTo} /> },
          { label: "Recorded", value: <By at={order.recordedAt} who={order.recordedBy} /> },
          ...(order.acceptedAt
            ? [{ label: "Accepted", value: <By at={order.acceptedAt} who={order.acceptedBy} /> }]
            : []),
          ...(order.note ? [{ label: "Note", value: <span className="lines">{order.note}</span> }] : []),
        ]}
      />
      {order.ruleSetPhrases.length > 0 ? (
        <p className="quiet">
          {order.ruleSet}: {order.ruleSetPhrases.join(". ")}.
        </p>
      ) : null}
    </Section>
  );
}
