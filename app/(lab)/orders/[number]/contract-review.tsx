import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { notDoneNotices } from "@/lib/domain/order/not-done";
import type { OrderDecidability } from "@/lib/views/order/decidability";
import type { OrderPage } from "@/lib/views/order/order";
import { acceptOrderAction } from "../actions";
import { ReviewQuestions } from "./contract/review-questions";
import { ExpectedStatements, outsideScope, undecidable } from "./expected-statements";

const List = ({ items }: { readonly items: readonly string[] }) => (
  <ul className="list">
    {items.map((item) => (
      <li key={item}>{item}</li>
    ))}
  </ul>
);

/** Accepting is never refused for it: the customer may want the values alone. */
const UndecidableWarning = ({ points }: { readonly points: OrderDecidability }) => {
  const open = undecidable(points);
  if (open.length === 0) return null;
  return (
    <Notice
      kind="info"
      title={
        open.length === 1 ? "One setpoint is not decidable" : `${open.length} setpoints are not decidable`
      }
    >
      {`Line ${[...new Set(open.map(({ position }) => position))].join(", ")}: ${open.map(({ setpoint }) => setpoint).join(", ")}. With the U to expect, no result could pass there; the certificate will say “not decidable”. Tell the customer before you accept.`}
    </Notice>
  );
};

/** 7.1.1: known before the order is accepted; each such result is marked on the certificate. */
const OutsideWarning = ({ points }: { readonly points: OrderDecidability }) => {
  const outside = outsideScope(points);
  if (outside.length === 0) return null;
  return (
    <Notice
      kind="info"
      title={
        outside.length === 1
          ? "One setpoint lies outside the scope"
          : `${outside.length} setpoints lie outside the scope`
      }
    >
      {`Line ${[...new Set(outside.map(({ position }) => position))].join(", ")}: ${outside.map(({ setpoint }) => setpoint).join(", ")}. The certificate marks these results as not covered by the accreditation. Tell the customer before you accept.`}
    </Notice>
  );
};

type QuestionsProps = {
  readonly order: OrderPage;
  readonly told: readonly string[];
  readonly points: OrderDecidability;
};

const Questions = ({ order, told, points }: QuestionsProps) => (
  <ActionForm action={acceptOrderAction} label="Accept the order">
    <input type="hidden" name="number" value={order.number} />
    <input type="hidden" name="version" value={order.version} />
    <ReviewQuestions goesOut={order.lines.some(({ goesOut }) => goesOut)} />
    {told.length > 0 ? (
      <CheckboxField name="toldCustomer" label="The customer was told of what is listed above, and agrees." />
    ) : null}
    <UndecidableWarning points={points} />
    <OutsideWarning points={points} />
    <div className="form-actions">
      <SubmitButton pending="Accepting…">Accept the order</SubmitButton>
    </div>
  </ActionForm>
);

/** What must be settled before the laboratory is bound (ISO/IEC 17025:2017, 7.1.1 to 7.1.5). */
export function ContractReview({
  order,
  points,
}: {
  readonly order: OrderPage;
  readonly points: OrderDecidability;
}) {
  const of = (kind: "missing" | "notice") =>
    order.findings.flatMap((finding) => (finding.kind === kind ? [finding.message] : []));
  const missing = of("missing");
  const told = [...of("notice"), ...notDoneNotices(points)];
  return (
    <Section
      title="Contract review"
      id="review"
      note="ISO/IEC 17025:2017, 7.1. From acceptance on the lines are fixed."
    >
      {missing.length > 0 ? (
        <Notice kind="info" title="Not complete yet">
          <List items={missing} />
          {order.mayAmend ? (
            <LinkButton href={`/orders/${order.number}/amend`}>Amend the order</LinkButton>
          ) : null}
        </Notice>
      ) : null}
      {told.length > 0 ? (
        <Notice kind="info" title="The customer should hear of this">
          <List items={told} />
        </Notice>
      ) : null}
      <ExpectedStatements points={points} />
      {order.openDifferences > 0 ? (
        <Notice kind="info" title="A difference is not settled">
          Settle it with the customer under <a href="#differences">Differences</a>; then the order can be
          accepted.
        </Notice>
      ) : null}
      {order.state === "requested" ? (
        <p className="quiet">
          The customer requested it. Once the desk has taken it over, it can be accepted.
        </p>
      ) : missing.length > 0 || order.openDifferences > 0 ? null : order.mayAccept ? (
        <Questions order={order} told={told} points={points} />
      ) : (
        <p className="quiet">The front desk or a quality manager accepts the order.</p>
      )}
    </Section>
  );
}
