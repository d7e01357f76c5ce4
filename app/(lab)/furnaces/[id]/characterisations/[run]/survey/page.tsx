import { notFound } from "next/navigation";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { isoDay } from "@/lib/domain/calibration/due";
import { surveyKindLabels, surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import { characterisationRunView } from "@/lib/views/characterisation-run";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { SurveyCaution } from "../../../../survey-caution";
import { SurveyForm } from "../../../../survey-form";

export const metadata = { title: "Record a survey" };

type Props = {
  readonly params: Promise<{ readonly id: string; readonly run: string }>;
  readonly searchParams: Promise<{ readonly kind?: string | string[]; readonly celsius?: string | string[] }>;
};

export default async function SurveyPage({ params, searchParams }: Props) {
  const actor = await requirePermission("furnace.record");
  const { id, run } = await params;
  const asked = await searchParams;
  const view = await load(characterisationRunView(actor, run));
  const kind = surveyKinds.find((one) => one === asked.kind);
  const celsius = view.plan.temperatures.find((one) => String(one) === asked.celsius);
  if (view.furnace.id !== id || !kind || celsius === undefined || !view.mayMeasure) notFound();
  const trail = [
    { label: "Furnaces", href: "/furnaces" },
    { label: view.furnace.tag, href: `/furnaces/${id}` },
    { label: view.number, href: `/furnaces/${id}/characterisations/${view.id}` },
  ];
  return (
    <Page title={`${surveyKindLabels[kind]} at ${celsius} °C`} crumbs={<Breadcrumb trail={trail} />}>
      <SurveyCaution celsius={celsius} />
      <Section title="Readings" wide>
        <SurveyForm view={view} kind={kind} celsius={celsius} today={isoDay(new Date())} />
      </Section>
    </Page>
  );
}
