import { notFound } from "next/navigation";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { isoDay } from "@/lib/domain/calibration/due";
import { characterisationRunView } from "@/lib/views/characterisation-run";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CharacterisationOutcome } from "../../../characterisation-outcome";
import { OrdersNote } from "../../../orders-note";
import { PlanFacts } from "../../../plan-facts";
import { RunStateMark } from "../../../run-state-mark";
import { SubmitForm } from "../../../submit-form";
import { SurveySections } from "../../../survey-sections";
import { SurveyTable } from "../../../survey-table";

export const metadata = { title: "Characterisation" };

type Props = { readonly params: Promise<{ readonly id: string; readonly run: string }> };

export default async function CharacterisationPage({ params }: Props) {
  const actor = await requireStaff();
  const { id, run } = await params;
  const view = await load(characterisationRunView(actor, run));
  if (view.furnace.id !== id) notFound();
  const trail = [
    { label: "Furnaces", href: "/furnaces" },
    { label: view.furnace.tag, href: `/furnaces/${id}` },
  ];
  return (
    <Page
      title={view.number}
      crumbs={<Breadcrumb trail={trail} />}
      state={<RunStateMark state={view.state} />}
      lead={`Characterisation of ${view.configuration.name}, furnace ${view.furnace.tag}`}
    >
      <CharacterisationOutcome view={view} />
      <PlanFacts view={view} />
      <SurveyTable view={view} />
      <OrdersNote kind={view.configuration.kind} />
      {view.mayMeasure ? <SubmitForm view={view} today={isoDay(new Date())} /> : null}
      <SurveySections view={view} />
    </Page>
  );
}
