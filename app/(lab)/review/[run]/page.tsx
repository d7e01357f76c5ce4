import type { Metadata } from "next";
import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { KeyHint } from "@/app/_ui/key-hint";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { reviewRunView } from "@/lib/views/review-run";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ReportLine } from "../../quality/report-line";
import { StepKeys } from "../step-keys.client";
import { Decide } from "./decide";
import { DecisionHistory } from "./decision-history";
import { ExceptionList } from "./exception-list";
import { GateLine } from "./gate-line";
import { Lots } from "./lots";
import { Opinions } from "./opinions/opinions";
import { ReadingState } from "./reading-state";
import { Replacing } from "./replacing";
import { ResultMatrix } from "./result-matrix";

type Props = { readonly params: Promise<{ readonly run: string }> };

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => ({
  title: `Review of ${(await params).run}`,
});

const runStates: Readonly<Record<string, { state: string; label: string }>> = {
  submitted: { state: "waiting", label: "Waiting for review" },
  returned: { state: "returned", label: "Returned" },
  "signed-off": { state: "issued", label: "Signed off" },
};

export default async function ReviewRunPage({ params }: Props) {
  const actor = await requirePermission("review.read");
  const review = await load(reviewRunView(actor, (await params).run));
  const { submission, evaluation } = review;
  return (
    <Page
      title={review.number}
      crumbs={<Breadcrumb trail={[{ label: "Review", href: "/review" }]} />}
      state={<StateMark {...(runStates[review.state] ?? { state: "open", label: "Not submitted" })} />}
      lead={
        <>
          {submission ? (
            <>
              Submitted by {submission.by} on <Timestamp at={submission.at} precision="minute" />.{" "}
            </>
          ) : null}
          Measured by {review.performers.join(", ")}; {review.furnace}; evaluation {evaluation.sequence}.{" "}
          <Link href={`/runs/${review.number}`}>The run itself</Link>. <KeyHint keys={["j", "k"]} /> move
          through the results, Enter opens, <KeyHint keys={["n"]} /> opens the next that must be.
        </>
      }
    >
      <StepKeys steps pages={{ n: review.duty.next }} />
      <ExceptionList
        exceptions={review.exceptions}
        settled={review.settledExceptions}
        deviations={review.deviations}
        note={submission?.note ?? ""}
      >
        <GateLine review={review} />
      </ExceptionList>
      <ReadingState review={review} />
      <ResultMatrix review={review} />
      <Lots review={review} />
      <Opinions run={review.number} />
      {review.state === "submitted" ? <Decide review={review} /> : null}
      <Replacing review={review} />
      <Section title="History">
        <DecisionHistory decisions={review.decisions} />
      </Section>
      <ReportLine actor={actor} kind="run" name={review.number} />
    </Page>
  );
}
