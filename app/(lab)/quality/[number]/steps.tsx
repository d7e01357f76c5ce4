import { ChoiceField } from "@/app/_ui/choice-field.client";
import { DateField } from "@/app/_ui/date-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { Section } from "@/app/_ui/section";
import { entryKindLabels } from "@/lib/domain/nonconformity/labels";
import type { NonconformityPage } from "@/lib/views/nonconformity/nonconformity";
import {
  closeAction,
  effectAction,
  enterAction,
  holdWorkAction,
  reopenAction,
  resumeAction,
  tellAction,
} from "../actions";
import { StepForm } from "./step-form";

type Props = { readonly page: NonconformityPage };

const EffectStep = ({ page }: Props) => (
  <StepForm
    of={page}
    action={effectAction}
    summary="State the effect on results"
    label="What it did to results"
    hint="How you know; the certificates that stand on it are listed by themselves."
  >
    <NumberField
      name="deltaCelsius"
      label="Errors are expected to change by"
      unit="°C"
      hint="With its sign; left empty while nobody knows."
      optional
    />
    <DateField name="from" label="Measured from" optional />
    <DateField name="until" label="Measured until" optional />
  </StepForm>
);

const DecidedSteps = ({ page }: Props) => (
  <>
    <EffectStep page={page} />
    <StepForm
      of={page}
      action={tellAction}
      summary={page.kind === "complaint" ? "Answer the customer" : "Tell the customers concerned"}
      label="In plain words"
      hint={
        page.kind === "complaint"
          ? "They read it in the portal; the mail says only that it is there."
          : "It goes out by mail, one for each customer: no results, serials or prices in it."
      }
    />
    {page.openHolds > 0 && page.state === "corrected" ? (
      <StepForm
        of={page}
        action={resumeAction}
        summary="Authorise that the work resumes"
        label="On what grounds"
      />
    ) : null}
    {page.state === "corrected" && page.mayClose ? (
      <StepForm of={page} action={closeAction} summary="Close it" label="What you looked at" kind="primary" />
    ) : null}
    {page.state === "corrected" && !page.mayClose ? (
      <p className="quiet">
        It is closed by somebody else than who reported it, corrected it or did the work.
      </p>
    ) : null}
  </>
);

const recordable = ["note", "correction", "cause", "corrective-action"] as const;

/** What can be done now; what cannot is not offered. */
export function Steps({ page }: Props) {
  if (page.state === "closed")
    return page.mayDecide ? (
      <Section title="Next">
        <StepForm of={page} action={reopenAction} summary="Reopen it" label="Why" kind="danger" />
      </Section>
    ) : null;
  const kinds = recordable.filter((kind) => kind !== "correction" || page.state !== "open");
  return (
    <Section title="Next">
      {page.mayHold && page.toHold.length > 0 ? (
        <StepForm
          of={page}
          action={holdWorkAction}
          summary={`Stop ${page.toHold.length} ${page.toHold.length === 1 ? "sensor" : "sensors"} without a certificate`}
          label="Why they stand still"
          hint={`${page.toHold.slice(0, 12).join(", ")}${page.toHold.length > 12 ? " and others" : ""}`}
          kind="danger"
        />
      ) : null}
      {page.mayOpen ? (
        <StepForm of={page} action={enterAction} summary="Record a step" label="Words">
          <ChoiceField
            name="kind"
            legend="What you record"
            defaultValue="note"
            choices={kinds.map((value) => ({ value, label: entryKindLabels[value] }))}
          />
        </StepForm>
      ) : null}
      {page.mayDecide ? <DecidedSteps page={page} /> : null}
    </Section>
  );
}
