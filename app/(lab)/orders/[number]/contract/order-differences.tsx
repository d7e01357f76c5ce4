import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import type { OrderContract } from "@/lib/views/order/contract";
import { raiseDifferenceAction, settleDifferenceAction } from "./actions";

type Difference = OrderContract["differences"][number];

const Settle = ({ number, id }: { readonly number: string; readonly id: string }) => (
  <Disclosure summary="Settle it with the customer">
    <ActionForm action={settleDifferenceAction} label="Settle the difference">
      <input type="hidden" name="number" value={number} />
      <input type="hidden" name="differenceId" value={id} />
      <TextArea name="text" label="How it was settled" rows={2} maxLength={1000} />
      <TextField name="agreedWith" label="With whom of the customer" maxLength={120} />
      <div className="form-actions">
        <SubmitButton pending="Settling…">Settle it</SubmitButton>
      </div>
    </ActionForm>
  </Disclosure>
);

const Item = ({
  difference,
  contract,
}: {
  readonly difference: Difference;
  readonly contract: OrderContract;
}) => {
  const { id, text, who, at, settlement } = difference;
  return (
    <li className="stack">
      <p>
        {settlement ? (
          <StateMark state="settled" shape="disc" tone="good" label="Settled" />
        ) : (
          <StateMark state="open" tone="watch" label="Open" />
        )}{" "}
        <span className="lines">{text}</span>{" "}
        <span className="quiet">
          <Timestamp at={at} />, {who}
        </span>
      </p>
      {settlement ? (
        <p className="lines">
          {settlement.text}{" "}
          <span className="quiet">
            Settled with {settlement.agreedWith}, <Timestamp at={settlement.at} />, {settlement.who}
          </span>
        </p>
      ) : contract.mayDiffer ? (
        <Settle number={contract.number} id={id} />
      ) : null}
    </li>
  );
};

/** What was asked and what can be done differ: each stands here until it is settled (ISO/IEC 17025:2017, 7.1.4). */
export function OrderDifferences({ contract }: { readonly contract: OrderContract }) {
  const { differences, mayDiffer, number } = contract;
  if (differences.length === 0 && !mayDiffer) return null;
  return (
    <Section
      title="Differences"
      id="differences"
      note="Between what is asked and what can be done. Until each is settled, the order is not accepted and not changed, and no run with its sensors starts."
    >
      {differences.length > 0 ? (
        <ul className="list">
          {differences.map((difference) => (
            <Item key={difference.id} difference={difference} contract={contract} />
          ))}
        </ul>
      ) : (
        <p className="quiet">None is known.</p>
      )}
      {mayDiffer ? (
        <Disclosure summary="Raise a difference">
          <ActionForm action={raiseDifferenceAction} label="Raise a difference">
            <input type="hidden" name="number" value={number} />
            <TextArea name="text" label="What is asked, and what can be done" rows={2} maxLength={1000} />
            <div className="form-actions">
              <SubmitButton kind="quiet" pending="Raising…">
                Raise it
              </SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
    </Section>
  );
}
