import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { SelectField } from "@/app/_ui/select-field.client";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { noteKindLabels, noteKinds } from "@/lib/domain/order/note";
import type { OrderContract } from "@/lib/views/order/contract";
import { noteOrderAction } from "./actions";

const kindChoices = noteKinds.map((value) => ({ value, label: noteKindLabels[value] }));

/** What was said, in the order in which it was said (ISO/IEC 17025:2017, 7.1.8). */
export function OrderNotes({ contract }: { readonly contract: OrderContract }) {
  const { notes, mayNote, number } = contract;
  return (
    <Section title="Notes" id="notes" note="Kept as written; none is changed or taken away.">
      {notes.length > 0 ? (
        <ul className="list">
          {notes.map(({ key, kind, text, isForCustomer, who, at }) => (
            <li key={key}>
              <Timestamp at={at} /> {who}. {kind}:{" "}
              <StateMark
                state={isForCustomer ? "seen-by-customer" : "ours"}
                shape={isForCustomer ? "disc" : "dash"}
                tone="rest"
                label={isForCustomer ? "Customer sees it" : "Ours only"}
              />
              <p className="lines">{text}</p>
            </li>
          ))}
        </ul>
      ) : null}
      {mayNote ? (
        <Disclosure summary="Write a note">
          <ActionForm action={noteOrderAction} label="Write a note">
            <input type="hidden" name="number" value={number} />
            <SelectField name="kind" label="What it is" choices={kindChoices} defaultValue="note" />
            <TextArea name="text" label="Text" rows={3} maxLength={2000} />
            <CheckboxField name="isForCustomer" label="The customer sees it in the portal" />
            <div className="form-actions">
              <SubmitButton kind="quiet" pending="Keeping…">
                Keep the note
              </SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
    </Section>
  );
}
