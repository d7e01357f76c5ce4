import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { Notice } from "@/app/_ui/notice";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { OrderPage } from "@/lib/views/order/order";
import { agreeRollAction } from "./actions";

type OpenRoll = OrderPage["openRolls"][number];

type Props = {
  /** Where the agreement can be recorded: the order's number; null: it is only told. */
  readonly order: string | null;
  readonly rolls: readonly OpenRoll[];
};

const Agree = ({ order, roll: { lot, roll, name } }: { readonly order: string; readonly roll: OpenRoll }) => (
  <Disclosure summary={`The customer agrees to one end of ${name}`}>
    <ActionForm action={agreeRollAction} label={`One end of ${name}`}>
      <input type="hidden" name="number" value={order} />
      <input type="hidden" name="lot" value={lot} />
      <input type="hidden" name="roll" value={roll} />
      <div className="fields">
        <TextField name="agreedWith" label="Agreed with" maxLength={120} hint="Who of the customer." />
        <TextField
          name="text"
          label="By what"
          maxLength={200}
          hint="A letter, a mail, a call and its day. The certificate says it."
        />
      </div>
      <div className="form-actions">
        <SubmitButton kind="quiet">Record the agreement</SubmitButton>
      </div>
    </ActionForm>
  </Disclosure>
);

/** Under the rule set a roll stands on both its ends: one alone says nothing for it, unless the customer agreed. */
export function OpenRolls({ order, rolls }: Props) {
  const open = rolls.filter(({ agreement }) => agreement === null);
  const agreed = rolls.flatMap(({ name, agreement }) =>
    agreement ? [`${name}: ${agreement.text} (${agreement.agreedWith})`] : [],
  );
  return (
    <>
      {open.length > 0 ? (
        <Notice kind="caution" title="One end of a roll is not here">
          {`Both ends of a roll are reported. The other end is not here, or nobody said which end it is: ${open.map(({ name, tags }) => `${name} (${tags.join(", ")})`).join("; ")}. No certificate is signed for them until it is, or the customer agreed to one end.`}
        </Notice>
      ) : null}
      {order === null ? null : open.map((roll) => <Agree key={roll.name} order={order} roll={roll} />)}
      {agreed.length > 0 ? (
        <Notice kind="info" title="One end, as the customer agreed">
          {agreed.join("; ")}
        </Notice>
      ) : null}
    </>
  );
}
