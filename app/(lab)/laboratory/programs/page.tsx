import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { NewToken, TokenTable } from "@/app/_ui/program-tokens";
import { Section } from "@/app/_ui/section";
import { laboratoryProgramsView } from "@/lib/views/machine/programs";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { makeLaboratoryTokenAction, revokeAnyTokenAction } from "./actions";

export const metadata = { title: "Programs" };

export default async function LaboratoryProgramsPage() {
  const actor = await requirePermission("laboratory.configure");
  const { tokens } = await load(laboratoryProgramsView(actor, new Date()));
  return (
    <Page
      title="Programs of the laboratory"
      crumbs={<Breadcrumb trail={[{ label: "Laboratory", href: "/laboratory" }]} />}
      lead={
        <>
          Tokens by which a program reads what the laboratory reads: all orders, all certificates. Customers
          make their own, for their own. What there is to ask stands in{" "}
          <a href="/api/v1/openapi.json">the interface’s OpenAPI document</a>.
        </>
      }
    >
      <Section title="Tokens" wide>
        <TokenTable tokens={tokens} revoke={revokeAnyTokenAction} />
      </Section>
      <Section title="Make a token">
        <NewToken make={makeLaboratoryTokenAction} scopes={["orders:read", "certificates:read"]} />
      </Section>
    </Page>
  );
}
