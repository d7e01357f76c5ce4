import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { laboratoryView } from "@/lib/views/laboratory";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { configureLaboratoryAction } from "./actions";
import { LaboratoryFields } from "./laboratory-fields";
import { MarkForm } from "./mark-form";

export const metadata = { title: "The laboratory" };

export default async function LaboratoryPage() {
  const actor = await requirePermission("laboratory.configure");
  const laboratory = await load(laboratoryView(actor));
  return (
    <Page
      title="The laboratory"
      crumbs={<Breadcrumb trail={[{ label: "Staff", href: "/staff" }]} />}
      lead="What stands at the head of every certificate from now on; certificates already signed off keep what they say."
    >
      <ActionForm action={configureLaboratoryAction} label="The laboratory’s settings">
        <input type="hidden" name="version" value={laboratory.version} />
        <LaboratoryFields laboratory={laboratory} />
        <div className="form-actions">
          <SubmitButton>Save</SubmitButton>
        </div>
      </ActionForm>
      <Section title="Accreditation mark">
        <MarkForm version={laboratory.version} documentId={laboratory.accreditationMarkId} />
      </Section>
      <Section title="What it is accredited for, and how it works">
        <p>
          Its <Link href="/scope">scope</Link> says what its results are held against; its{" "}
          <Link href="/procedures">procedures</Link> what each run brings to its budget. Its{" "}
          <Link href="/laboratory/programs">programs</Link> read orders and certificates by token. The{" "}
          <Link href="/laboratory/seal">seal</Link> shows that a certificate was not changed.
        </p>
      </Section>
    </Page>
  );
}
