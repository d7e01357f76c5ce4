import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentKindLabels } from "@/lib/domain/equipment/labels";
import { providerRouteLabels } from "@/lib/domain/provider/labels";
import { providersView } from "@/lib/views/providers";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ProviderMark } from "./provider-mark";

export const metadata = { title: "Providers" };

const columns = [
  { key: "name", header: "Name" },
  { key: "route", header: "What it is" },
  { key: "accreditation", header: "Accreditation" },
  { key: "scope", header: "Approved for" },
  { key: "dates", header: "From, until" },
  { key: "state", header: "State" },
];

export default async function ProvidersPage() {
  const actor = await requireStaff();
  const today = isoDay(new Date());
  const { providers, mayRecord } = await load(providersView(actor));
  const record = mayRecord ? (
    <LinkButton href="/providers/new" kind="primary">
      Record a provider
    </LinkButton>
  ) : null;
  return (
    <Page
      title="Providers"
      crumbs={<Breadcrumb trail={[{ label: "Standards", href: "/standards" }]} />}
      lead="Who calibrates for the laboratory. A certificate counts only if its issuer was approved for that equipment on the day it was performed, and is not suspended."
      actions={providers.length > 0 ? record : null}
    >
      {providers.length === 0 ? (
        <EmptyState title="No providers yet" action={record}>
          Record the institutes and laboratories that calibrate your standards, then approve them.
        </EmptyState>
      ) : (
        <DataTable
          caption="Providers"
          captionUnseen
          columns={columns}
          rows={providers.map((provider) => ({
            key: provider.id,
            tone: provider.state === "suspended" ? "bad" : undefined,
            cells: {
              name: <Link href={`/providers/${provider.id}`}>{provider.name}</Link>,
              route: providerRouteLabels[provider.route],
              accreditation: [provider.accreditation, provider.accreditationBody].filter(Boolean).join(", "),
              scope: provider.scope.map(({ kind }) => equipmentKindLabels[kind]).join(", "),
              dates: provider.approvedFrom ? `${provider.approvedFrom}, ${provider.approvedUntil}` : "",
              state: <ProviderMark provider={provider} today={today} />,
            },
          }))}
        />
      )}
    </Page>
  );
}
