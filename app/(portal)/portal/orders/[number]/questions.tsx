import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { PortalOrder } from "@/lib/views/portal-orders";
import { answerQuestionAction } from "./actions";

type Question = PortalOrder["questions"][number];

function AnswerForm({ question }: { readonly question: Question }) {
  return (
    <ActionForm action={answerQuestionAction} label="Answer the question">
      <input type="hidden" name="questionId" value={question.id} />
      {question.choices.length > 0 ? (
        <ChoiceField
          name="choice"
          legend="Your answer"
          choices={question.choices.map((value) => ({ value, label: value }))}
        />
      ) : null}
      <TextArea
        name="text"
        label={question.choices.length > 0 ? "In your own words" : "Your answer"}
        optional={question.choices.length > 0}
        rows={3}
        maxLength={2000}
      />
      <div className="form-actions">
        <SubmitButton>Send the answer</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** What the laboratory asks about this order; whoever may, answers here. */
export function Questions({ order }: { readonly order: PortalOrder }) {
  return (
    <ul className="stack plain-list">
      {order.questions.map((question) => (
        <li key={question.id}>
          <h3>{question.serial ? `About sensor ${question.serial}` : "About the order"}</h3>
          <p className="lines">{question.text}</p>
          {order.mayAnswer ? (
            <AnswerForm question={question} />
          ) : (
            <p className="quiet">A colleague of yours who may order answers this.</p>
          )}
        </li>
      ))}
    </ul>
  );
}
