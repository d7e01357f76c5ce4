import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DataTable } from "@/app/_ui/data-table";
import { DateField } from "@/app/_ui/date-field.client";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { ownCertificatesView } from "@/lib/views/own-certificates";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { adoptCertificateAction } from "../actions";

export const metadata = { title: "Our own certificate" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function OwnCertificatesPage({ params }: Props) {
  const actor = await requirePermission("calibration.record");
  const { equipment, certificates } = await load(ownCertificatesView(actor, (await params).id));
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: `/standards/${equipment.id}` },
  ];
  return (
    <Page
      title={`Our own certificates of ${equipment.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="A working standard that this laboratory has calibrated: the figures are those of the signed certificate, and the chain goes on through its results. Another person accepts it before it is used."
    >
      {certificates.length === 0 ? (
        <EmptyState title="None to take over">
          {`A certificate of an order of the laboratory’s own, with serial number ${equipment.serial} and the same type, would stand here.`}
        </EmptyState>
      ) : null}
      {certificates.map(({ certificate, performedOn, dueOn, findings }) => (
        <Section
          key={certificate}
          title={certificate}
          note={`Performed on ${performedOn}; U = ${findings.expanded} µV, k = ${findings.coverageFactor}`}
          wide
        >
          <DataTable
            caption={`Deviations of certificate ${certificate}`}
            captionUnseen
            columns={[
              { key: "celsius", header: "Temperature", unit: "°C", align: "number" },
              { key: "deviation", header: "Deviation", unit: "µV", align: "number" },
            ]}
            rows={findings.points.map((point) => ({
              key: String(point.celsius),
              cells: {
                celsius: String(point.celsius),
                deviation: String(point.deviationMicrovolt).replace("-", "−"),
              },
            }))}
          />
          <ActionForm action={adoptCertificateAction} label={`Take over ${certificate}`}>
            <input type="hidden" name="equipmentId" value={equipment.id} />
            <input type="hidden" name="certificate" value={certificate} />
            <DateField name="dueOn" label="Due again on" defaultValue={dueOn} />
            <div className="form-actions">
              <SubmitButton>Take it over</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      ))}
    </Page>
  );
}
