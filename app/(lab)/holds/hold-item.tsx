import Link from "next/link";
import { Disclosure } from "@/app/_ui/disclosure";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { holdEndLabels, holdKindLabels } from "@/lib/domain/hold/labels";
import { isDisposalAsked } from "@/lib/domain/hold/propose-outcome";
import { answerWayLabels } from "@/lib/domain/question/labels";
import type { HoldView } from "@/lib/views/hold/holds";
import { DisposeForm } from "../storage/dispose-form";
import { AskForm, DeskAnswerForm } from "./hold-forms";
import { outcomesOf, ReleaseForm } from "./release-form";

type Props = {
  readonly hold: HoldView;
  readonly mayPlace: boolean;
  readonly mayRelease: boolean;
  readonly mayDispose?: boolean;
};

const mark = (hold: HoldView) => {
  if (hold.release) return <StateMark state="done" label={holdEndLabels[hold.release.outcome]} />;
  return hold.isWaiting ? (
    <StateMark state="waiting" label="On hold, waiting for the customer" />
  ) : (
    <StateMark state="exception" label="On hold" />
  );
};

const QuestionItem = ({ question }: { readonly question: HoldView["questions"][number] }) => (
  <li>
    Asked <Timestamp at={question.askedAt} />: {question.text}
    {question.answer ? (
      <>
        <p>
          {question.answer.saidByName}, <Timestamp at={question.answer.saidAt} />,{" "}
          {answerWayLabels[question.answer.cameBy]}:{" "}
          <strong>“{[question.answer.choice, question.answer.text].filter(Boolean).join(". ")}”</strong>
        </p>
        {question.answer.insists ? (
          <p className="quiet">
            What follows for the laboratory: The customer insists on the measurement, so the certificate has
            to say what deviates (ISO/IEC 17025:2017, 7.4.3). Whoever ends the hold writes that sentence.
          </p>
        ) : null}
      </>
    ) : (
      <p className="quiet">No answer yet.</p>
    )}
  </li>
);

const NextStep = ({ hold, mayPlace, mayRelease }: Omit<Props, "mayDispose">) => {
  const open = hold.questions.find(({ answer }) => answer === null);
  return (
    <>
      {open && mayPlace ? (
        <Disclosure summary="Record what the customer told the desk">
          <DeskAnswerForm question={open} />
        </Disclosure>
      ) : null}
      {!open && mayPlace && !hold.nonconformity ? (
        <Disclosure summary="Ask the customer">
          <AskForm holdId={hold.id} />
        </Disclosure>
      ) : null}
      {hold.nonconformity ? (
        <p>
          The work resumes on the page of{" "}
          <Link href={`/quality/${hold.nonconformity}`}>{hold.nonconformity}</Link>, by “Authorise that the
          work resumes”; this hold ends with it.
        </p>
      ) : null}
      {hold.isInReview ? (
        <p className="quiet">
          Measured, and waiting in review: it does not go back unmeasured unless the review lets it go first.
        </p>
      ) : null}
      {!open && mayRelease && outcomesOf(hold).length > 0 ? (
        <Disclosure summary={hold.nonconformity ? "Return it unmeasured instead" : "End the hold"}>
          <ReleaseForm hold={hold} />
        </Disclosure>
      ) : null}
    </>
  );
};

const lastAnswerOf = (hold: HoldView) =>
  hold.questions.findLast((one) => one.answer !== null)?.answer ?? undefined;

/** The customer's answer as it is kept with a disposal: what they said, when and how. */
const instructionOf = (hold: HoldView): string => {
  const answer = lastAnswerOf(hold);
  if (!answer) return "";
  const words = [answer.choice, answer.text].filter(Boolean).join(". ");
  return `“${words}”, ${answerWayLabels[answer.cameBy]}, ${answer.saidAt.slice(0, 10)}`.slice(0, 400);
};

/** How it ended, and what is left to do with a sensor that is not measured. */
const Ended = ({ hold, mayDispose }: Pick<Props, "hold" | "mayDispose">) => {
  const { release } = hold;
  if (release === null) return null;
  return (
    <>
      <p>
        Ended by {release.releasedBy}, <Timestamp at={release.releasedAt} />: {release.reason}
        {release.disclaimer ? ` The certificate says: ${release.disclaimer}` : null}
        {release.awaitsAnother ? " Another sensor is awaited in its place." : null}
      </p>
      {release.outcome === "return-unmeasured" && hold.isOnShelf ? (
        <>
          <p>
            It waits to go back: <Link href={`/sensors/${hold.tag}#hand-back`}>hand {hold.tag} back</Link> or{" "}
            <Link href={`/orders/${hold.orderNumber}/ship`}>send it with a parcel</Link>.
          </p>
          {mayDispose && isDisposalAsked(lastAnswerOf(hold)) ? (
            <Disclosure summary="Dispose of it, as the customer asked">
              <DisposeForm tag={hold.tag} instruction={instructionOf(hold)} />
            </Disclosure>
          ) : null}
        </>
      ) : null}
    </>
  );
};

/** One hold: why, what was asked and answered, how it ended or what can be done now. */
export function HoldItem(props: Props) {
  const { hold } = props;
  return (
    <article className="stack">
      <p>
        {hold.tag === "" ? "The whole order" : <Link href={`/sensors/${hold.tag}`}>{hold.tag}</Link>}:{" "}
        {holdKindLabels[hold.kind].toLowerCase()}. {mark(hold)}
      </p>
      <p>
        {hold.reason}
        {hold.nonconformity ? (
          <>
            {" "}
            (<Link href={`/quality/${hold.nonconformity}`}>{hold.nonconformity}</Link>)
          </>
        ) : null}
      </p>
      <p className="quiet">
        Put on hold by {hold.placedBy}, <Timestamp at={hold.placedAt} />
      </p>
      {hold.questions.length === 0 ? null : (
        <ul className="list">
          {hold.questions.map((question) => (
            <QuestionItem key={question.id} question={question} />
          ))}
        </ul>
      )}
      {hold.release ? <Ended hold={hold} mayDispose={props.mayDispose} /> : <NextStep {...props} />}
    </article>
  );
}
