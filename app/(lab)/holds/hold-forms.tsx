import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { HoldView } from "@/lib/views/hold/holds";
import { answerAtDeskAction, askAboutHoldAction, placeHoldAction } from "./actions";
import { QuestionFields } from "./question-fields";
import { WhyAndQuestion } from "./why-and-question.client";

/** A sensor, or with no tag the whole order. */
export function PlaceHoldForm({ orderNumber, tag }: { readonly orderNumber: string; readonly tag: string }) {
  return (
    <ActionForm action={placeHoldAction} label={tag === "" ? "Put the order on hold" : "Put on hold"}>
      <input type="hidden" name="orderNumber" value={orderNumber} />
      <input type="hidden" name="tag" value={tag} />
      <WhyAndQuestion>
        <TextArea
          name="reason"
          label="What is the matter"
          hint="Stands on the page and in the log. Do not name people."
          rows={2}
        />
      </WhyAndQuestion>
      <div className="form-actions">
        <SubmitButton kind="danger">
          {tag === "" ? "Put the order on hold" : `Put ${tag} on hold`}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

export function AskForm({ holdId }: { readonly holdId: string }) {
  return (
    <ActionForm action={askAboutHoldAction} label="Ask the customer">
      <input type="hidden" name="holdId" value={holdId} />
      <QuestionFields prefix="" />
      <div className="form-actions">
        <SubmitButton>Send the question</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** What the customer told the desk. */
export function DeskAnswerForm({ question }: { readonly question: HoldView["questions"][number] }) {
  return (
    <ActionForm action={answerAtDeskAction} label="Record the answer">
      <input type="hidden" name="questionId" value={question.id} />
      {question.choices.length === 0 ? null : (
        <ChoiceField
          name="choice"
          legend="They answered"
          choices={question.choices.map((value) => ({ value, label: value }))}
        />
      )}
      <TextArea
        name="text"
        label="In their words"
        rows={2}
        maxLength={2000}
        optional={question.choices.length > 0}
      />
      <TextField name="saidByName" label="Who said it" maxLength={120} autoComplete="off" />
      <div className="form-actions">
        <SubmitButton kind="quiet">Record the answer</SubmitButton>
      </div>
    </ActionForm>
  );
}
