import type { Metadata } from "next";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { procedureView } from "@/lib/views/procedure";
import { found } from "@/lib/views/view";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { LineList } from "../line-list";
import { ApproveForm } from "./approve-form";
import { FigureForm } from "./figure-form";
import { BudgetTextForm, GateTextForm } from "./text-forms";
import { VerificationForm } from "./verification-form";

type Props = { readonly params: Promise<{ readonly key: string }> };

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => ({
  title: `Draft of procedure ${(await params).key}`,
});

export default async function DraftPage({ params }: Props) {
  const actor = await requireStaff();
  const { key } = await params;
  const view = await load(procedureView(actor, key));
  const draft = await load(Promise.resolve().then(() => found(view.draft)));
  return (
    <Page
      title={draft.name}
      state={<StateMark state="draft" />}
      crumbs={
        <Breadcrumb
          trail={[
            { label: "Procedures", href: "/procedures" },
            { label: view.title, href: `/procedures/${key}` },
          ]}
        />
      }
      lead={`Drafted by ${draft.draftedBy}. Whoever changes it has drafted it; another person makes it current.`}
    >
      <Section title="Change and verification">
        <VerificationForm draft={draft} mayDraft={view.mayDraft} />
      </Section>
      <Section title="Figures" wide>
        {view.mayDraft ? (
          <FigureForm draft={draft} />
        ) : (
          <LineList lines={draft.lines} caption={`Figures of ${draft.name}`} />
        )}
      </Section>
      <Section title="As text" note="For what the form does not show. Judged whole.">
        <BudgetTextForm draft={draft} mayDraft={view.mayDraft} />
        <GateTextForm draft={draft} mayDraft={view.mayDraft} />
      </Section>
      <Section title="Make it current">
        <ApproveForm view={view} draft={draft} />
      </Section>
    </Page>
  );
}
