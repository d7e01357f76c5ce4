import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { KeyHint } from "@/app/_ui/key-hint";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { reviewResultView } from "@/lib/views/review-result";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { StepKeys } from "../../../step-keys.client";
import { BudgetSection } from "./budget-section";
import { CheckSection } from "./check-section";
import { Because, Opening } from "./opening";
import { ReadingSection } from "./reading-section";
import { RemarkThread } from "./remarks";
import { ResultSection } from "./result-section";
import { StandardSection } from "./standard-section";
import { WhatIfSection } from "./what-if-section";

type Props = {
  readonly params: Promise<{ readonly run: string; readonly tag: string; readonly setpoint: string }>;
};

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => {
  const { run, tag } = await params;
  return { title: `${tag} in ${run}` };
};

export default async function ReviewResultPage({ params }: Props) {
  const { run, tag, setpoint } = await params;
  if (!/^\d{1,4}$/.test(setpoint)) notFound();
  const actor = await requirePermission("review.read");
  const result = await load(reviewResultView(actor, run, tag, Number(setpoint)));
  const { duty } = result;
  const up = `/review/${result.number}`;
  const { previous, next, place, of } = result.neighbours;
  return (
    <Page
      title={`${result.tag} at ${result.nominal}`}
      crumbs={
        <Breadcrumb
          trail={[
            { label: "Review", href: "/review" },
            { label: result.number, href: up },
          ]}
        />
      }
      state={
        result.point.state === "measured" ? (
          <StateMark state={result.point.conformity.state} />
        ) : (
          <StateMark state={result.point.state} />
        )
      }
      lead={
        <>
          <TypeLetter letter={result.typeLetter} labelled /> serial {result.serial}, {result.customer}. Result{" "}
          {place} of {of}. <KeyHint keys={["k", "j", "n", "u"]} /> previous, next, next that must be opened,
          back to the run.
        </>
      }
      actions={
        <>
          {previous ? (
            <LinkButton href={previous} kind="quiet">
              Previous
            </LinkButton>
          ) : null}
          {next ? (
            <LinkButton href={next} kind="quiet">
              Next
            </LinkButton>
          ) : null}
          <LinkButton href={`${up}/${result.tag}`} kind="quiet">
            Deviation function
          </LinkButton>
          <LinkButton href={`/api/review/${result.number}/${result.tag}/draft`} kind="quiet" download>
            Draft certificate
          </LinkButton>
          {result.runState === "submitted" ? <LinkButton href={`${up}#decide`}>Decide</LinkButton> : null}
        </>
      }
    >
      <StepKeys
        pages={{ k: previous, j: next, n: duty.records ? (duty.nextToOpen ?? `${up}#decide`) : next, u: up }}
      />
      <div className="stack">
        <Opening duty={duty} up={up} />
        <Because duty={duty} />
      </div>
      {duty.remarks
        .filter(({ setpointId }) => setpointId === null)
        .map((remark) => (
          <RemarkThread key={remark.id} remark={remark} mayAnswer={duty.mayRemark} />
        ))}
      <ResultSection result={result} />
      <BudgetSection result={result} />
      <WhatIfSection result={result} />
      <ReadingSection result={result} />
      <StandardSection result={result} />
      <CheckSection result={result} />
    </Page>
  );
}
