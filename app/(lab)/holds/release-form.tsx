import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { proposeDisclaimer } from "@/lib/domain/hold/decide-release";
import { type HoldOutcome, holdOutcomeLabels, holdOutcomes } from "@/lib/domain/hold/labels";
import { isDisposalAsked, proposeOutcome } from "@/lib/domain/hold/propose-outcome";
import { anotherChoice } from "@/lib/domain/question/labels";
import type { HoldView } from "@/lib/views/hold/holds";
import { releaseHoldAction } from "./actions";

type Answer = NonNullable<HoldView["questions"][number]["answer"]>;

/** What is offered: nothing measured goes back as unmeasured, and nonconforming work resumes on its own page. */
export const outcomesOf = (hold: HoldView): readonly HoldOutcome[] =>
  holdOutcomes.filter((outcome) => {
    if (outcome === "return-unmeasured") return !hold.isInReview;
    return hold.nonconformity === null && (outcome !== "go-on" || !hold.isInsisted);
  });

const hintOf = (outcome: HoldOutcome) =>
  outcome === "return-unmeasured"
    ? { hint: "No certificate is made of it. Its customer reads: not measured, goes back to you." }
    : {};

const whyOf = (answer: Answer | undefined): string =>
  [answer?.choice, answer?.text].filter(Boolean).join(". ");

/** How it goes on, beginning with what the customer answered. */
export function ReleaseForm({ hold }: { readonly hold: HoldView }) {
  const answered = hold.questions.findLast(({ answer }) => answer !== null)?.answer ?? undefined;
  const outcomes = outcomesOf(hold);
  const choice = answered?.choice ?? "";
  const proposed = hold.nonconformity ? null : proposeOutcome(outcomes, answered);
  return (
    <ActionForm action={releaseHoldAction} label="End the hold">
      <input type="hidden" name="holdId" value={hold.id} />
      <ChoiceField
        name="outcome"
        legend="How it goes on"
        {...(proposed === null ? {} : { defaultValue: proposed })}
        choices={outcomes.map((value) => ({ value, label: holdOutcomeLabels[value], ...hintOf(value) }))}
      />
      {isDisposalAsked(answered) ? (
        <p className="quiet">
          Not measured, so “{holdOutcomeLabels["return-unmeasured"]}”; that it is disposed of instead is
          recorded here afterwards.
        </p>
      ) : null}
      {hold.tag === "" ? null : (
        <CheckboxField
          name="awaitsAnother"
          label="The customer sends another sensor in its place"
          hint="Only where this one goes back unmeasured: its place in the order stays free, and the order waits."
          defaultChecked={choice === anotherChoice}
        />
      )}
      <TextArea name="reason" label="Why the hold ends" rows={2} defaultValue={whyOf(answered)} />
      {hold.nonconformity ? null : (
        <TextArea
          name="disclaimer"
          label="Disclaimer on the certificate"
          hint="Only where it goes on with one. The certificate says it in these words."
          rows={3}
          maxLength={1000}
          defaultValue={
            hold.isInsisted && answered ? proposeDisclaimer(hold.reason, answered.saidAt.slice(0, 10)) : ""
          }
          optional
        />
      )}
      <div className="form-actions">
        <SubmitButton>End the hold</SubmitButton>
      </div>
    </ActionForm>
  );
}
