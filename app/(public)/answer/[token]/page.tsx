import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { linkedQuestionView } from "@/lib/views/question/linked-question";
import { connectDatabase } from "@/lib/web/connect-database";
import { answerByLinkAction } from "./actions";

export const metadata = { title: "A question about your order", robots: "noindex" };

type Props = { readonly params: Promise<{ readonly token: string }> };

export default async function AnswerPage({ params }: Props) {
  const { token } = await params;
  connectDatabase();
  const question = await linkedQuestionView(token, new Date());
  if (!question?.isOpen)
    return (
      <Page title="A question about your order">
        <Notice kind="caution" title="There is nothing to answer here any more">
          The question was answered already, or the link’s days are over. Please write to the laboratory if
          something has changed.
        </Notice>
      </Page>
    );
  const { orderNumber, serial, choices } = question;
  return (
    <Page
      title={`A question about your order ${orderNumber}`}
      lead={`${question.laboratory} needs a word from you before the work goes on${
        serial ? `, about the sensor with serial ${serial}` : ""
      }.`}
    >
      <p className="lines">{question.text}</p>
      <ActionForm action={answerByLinkAction} label="Your answer">
        <input type="hidden" name="token" value={token} />
        {choices.length === 0 ? null : (
          <ChoiceField
            name="choice"
            legend="Your answer"
            choices={choices.map((value) => ({ value, label: value }))}
          />
        )}
        <TextArea
          name="text"
          label={choices.length === 0 ? "Your answer" : "Anything we should know"}
          rows={3}
          maxLength={2000}
          optional={choices.length > 0}
        />
        <TextField
          name="saidByName"
          label="Your name"
          hint="It is kept with the answer, and the time."
          autoComplete="name"
          maxLength={120}
        />
        <div className="form-actions">
          <SubmitButton>Send the answer</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
