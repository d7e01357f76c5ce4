import { TextArea } from "@/app/_ui/text-area.client";
import { conditionChoices } from "@/lib/domain/question/labels";

const choices = conditionChoices.join("\n");

type Props = {
  readonly prefix: string;
  /** What an empty question means, where it may stay empty. */
  readonly ifEmpty?: string;
};

/** What the customer is asked, and the answers they choose from. */
export const QuestionFields = ({ prefix, ifEmpty }: Props) => (
  <>
    <TextArea
      name={`${prefix}text`}
      label="Question to the customer"
      hint={`They read it behind a link in a mail.${ifEmpty ? ` ${ifEmpty}` : ""}`}
      rows={3}
      maxLength={2000}
      optional={ifEmpty !== undefined}
    />
    <TextArea
      name="choices"
      label="Answers offered"
      hint="One a line; none: they answer in their own words."
      defaultValue={choices}
      rows={5}
      optional
    />
  </>
);
