import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DataTable } from "@/app/_ui/data-table";
import { FieldList } from "@/app/_ui/field-list";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentKindLabels } from "@/lib/domain/equipment/labels";
import { providerRouteLabels } from "@/lib/domain/provider/labels";
import { providerView } from "@/lib/views/providers";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ApproveForm, SuspendForm } from "../approval-forms";
import { ProviderMark } from "../provider-mark";

export const metadata = { title: "Provider" };

type Props = { readonly params: Promise<{ readonly id: string }> };

const columns = [
  { key: "certificate", header: "Certificate" },
  { key: "equipment", header: "Equipment" },
  { key: "performedOn", header: "Performed" },
];

export default async function ProviderPage({ params }: Props) {
  const actor = await requireStaff();
  const { provider, certificates, mayRecord } = await load(providerView(actor, (await params).id));
  const scope = provider.scope.map(({ kind, range }) =>
    range ? `${equipmentKindLabels[kind]} (${range})` : equipmentKindLabels[kind],
  );
  return (
    <Page
      title={provider.name}
      crumbs={<Breadcrumb trail={[{ label: "Providers", href: "/providers" }]} />}
      state={<ProviderMark provider={provider} today={isoDay(new Date())} />}
      lead={providerRouteLabels[provider.route]}
    >
      <Section title="Approval">
        <FieldList
          items={[
            { label: "Accreditation", value: provider.accreditation },
            { label: "Accredited by", value: provider.accreditationBody },
            { label: "Approved from", value: provider.approvedFrom },
            { label: "Approved until", value: provider.approvedUntil },
            { label: "For", value: scope.join(", ") },
            { label: "It rests on", value: provider.note },
          ]}
        />
      </Section>
      <Section title="Certificates of ours" note="Newest first." wide>
        {certificates.length === 0 ? (
          <p className="quiet">None on record.</p>
        ) : (
          <DataTable
            caption="Certificates of ours"
            captionUnseen
            columns={columns}
            rows={certificates.map((one) => ({
              key: one.id,
              cells: {
                certificate: (
                  <Link href={`/standards/${one.equipment.id}/calibrations/${one.id}`}>
                    {one.certificate}
                  </Link>
                ),
                equipment: one.equipment.tag,
                performedOn: isoDay(one.performedOn),
              },
            }))}
          />
        )}
      </Section>
      {mayRecord ? (
        <Section
          title={provider.state === "approved" ? "Renew" : "Approve"}
          note="ISO/IEC 17025, 6.6.2: by criteria, and looked at again before the approval ends."
        >
          <ApproveForm provider={provider} />
        </Section>
      ) : null}
      {mayRecord && provider.state === "approved" ? (
        <Section title="Suspend" note="From now on nothing it calibrated is chosen; what was measured stays.">
          <SuspendForm provider={provider} />
        </Section>
      ) : null}
    </Page>
  );
}
