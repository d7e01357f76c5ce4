import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { runResultsView } from "@/lib/views/run/run-results";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RunPage } from "../run-page";
import { EvaluationSection } from "./evaluation-section";
import { EvaluateForm, SubmitForm } from "./submit-form";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({
  title: `Results of ${(await params).number}`,
});

export default async function RunResultsPage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(runResultsView(actor, (await params).number));
  const { head, evaluation } = view;
  const isCurrent = head.progress.evaluation === "current";
  return (
    <RunPage head={head} at="results">
      {evaluation?.findings.map(({ code, text }) => (
        <Notice key={`${code} ${text}`} kind="caution" title="Finding">
          {text}
        </Notice>
      ))}
      {head.progress.evaluation === "outdated" ? (
        <Notice kind="caution" title="These results are not of the run as it stands">
          Something changed since they were computed. Evaluate again; the earlier evaluation stays on record.
        </Notice>
      ) : null}
      {head.mayEvaluate ? (
        <Section title="Evaluate">
          <EvaluateForm view={view} />
        </Section>
      ) : null}
      <EvaluationSection view={view} />
      {head.mayWork && isCurrent ? (
        <Section title="Submit" note="The signatory then looks at it. It can come back to you with a reason.">
          <SubmitForm view={view} />
        </Section>
      ) : null}
    </RunPage>
  );
}
