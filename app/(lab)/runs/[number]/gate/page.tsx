import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { runGateView } from "@/lib/views/run/run-gate";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RunPage } from "../run-page";
import { BenchForm } from "./bench-form";
import { Cautions } from "./cautions";
import { GateSummary } from "./gate-summary";
import { HeadingList } from "./heading-list";
import { HeadingSection } from "./heading-section";
import { PassedGate } from "./passed-gate";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({ title: `Gate of ${(await params).number}` });

export default async function RunGatePage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(runGateView(actor, (await params).number, new Date()));
  if (!view.isBefore || view.passed)
    return (
      <RunPage head={view.head} at="gate">
        {view.passed ? (
          <PassedGate passed={view.passed} />
        ) : (
          <Notice kind="info">This run began before runs had a gate.</Notice>
        )}
        <Cautions />
      </RunPage>
    );
  return (
    <RunPage head={view.head} at="gate">
      <GateSummary view={view} />
      <HeadingList headings={view.headings} />
      <Cautions />
      {view.head.mayWork ? (
        <Section title="Today at the bench" note="Before the furnace is hot; the last figure counts." wide>
          <BenchForm view={view} />
        </Section>
      ) : null}
      {view.headings.map((heading) => (
        <HeadingSection key={heading.heading} run={view.head.number} heading={heading} />
      ))}
    </RunPage>
  );
}
