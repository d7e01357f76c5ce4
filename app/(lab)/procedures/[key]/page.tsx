import type { Metadata } from "next";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Disclosure } from "@/app/_ui/disclosure";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { procedureView } from "@/lib/views/procedure";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { draftRevisionAction } from "../actions";
import { LineList } from "./line-list";
import { RevisionTable } from "./revision-table";

type Props = { readonly params: Promise<{ readonly key: string }> };

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => ({
  title: `Procedure ${(await params).key}`,
});

export default async function ProcedurePage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(procedureView(actor, (await params).key));
  const { current, draft } = view;
  return (
    <Page
      title={view.title}
      crumbs={<Breadcrumb trail={[{ label: "Procedures", href: "/procedures" }]} />}
      lead={
        current
          ? `Runs made now follow revision ${current.revision}; earlier runs keep theirs.`
          : "No revision is current: no run can follow it."
      }
      actions={
        draft ? (
          <LinkButton href={`/procedures/${view.key}/draft`}>Draft of revision {draft.revision}</LinkButton>
        ) : null
      }
    >
      <Section title="Revisions" wide>
        <RevisionTable view={view} />
        {view.mayDraft && current && !draft ? (
          <ActionForm action={draftRevisionAction} shape="inline" label="Draft the next revision">
            <input type="hidden" name="key" value={view.key} />
            <SubmitButton kind="quiet">Draft the next revision</SubmitButton>
          </ActionForm>
        ) : null}
      </Section>
      {current ? (
        <Section title={`Figures of revision ${current.revision}`} wide>
          <LineList lines={current.lines} caption={`Figures of ${current.name}`} />
          <Disclosure summary="The whole of its budget inputs, as runs keep them">
            <pre>{current.budgetText}</pre>
          </Disclosure>
          <Disclosure summary="What its gate asks differently">
            <pre>{current.policyText}</pre>
          </Disclosure>
        </Section>
      ) : (
        <Notice kind="caution">Its first revision waits for its verification and for a second person.</Notice>
      )}
    </Page>
  );
}
