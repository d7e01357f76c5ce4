import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FileField } from "@/app/_ui/file-field.client";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { calibrationFormView } from "@/lib/views/calibration-form";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { receiveDigitalAction } from "../actions";
import { ProblemList } from "../problem-list.client";

export const metadata = { title: "Read a digital certificate" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function DigitalCertificatePage({ params }: Props) {
  const actor = await requirePermission("calibration.record");
  const nothing = { document: null, offer: 0, schemaFolder: null };
  const { equipment } = await load(calibrationFormView(actor, (await params).id, nothing));
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: `/standards/${equipment.id}` },
  ];
  return (
    <Page
      title={`Read a digital certificate of ${equipment.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="A digital calibration certificate (DCC 3.0 to 3.3) is read whole or refused with every problem and its place. What it says is then laid beside the form; you confirm it value by value."
    >
      <ActionForm action={receiveDigitalAction} label="Read a digital certificate">
        <ProblemList />
        <input type="hidden" name="equipmentId" value={equipment.id} />
        <FileField
          name="file"
          label="The certificate’s XML file"
          accept=".xml,application/xml,text/xml"
          hint="At most 4 MB."
        />
        <div className="form-actions">
          <SubmitButton>Read it</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
