import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { authorisationsView } from "@/lib/views/authorisations";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { AuthorisationList } from "./authorisation-list";
import { GrantForm } from "./grant-form";

export const metadata = { title: "Authorisations" };

type Props = { readonly params: Promise<{ readonly id: string }> };

/** ISO/IEC 17025 6.2.6: who may sign off and interpret what, and since when. */
export default async function AuthorisationsPage({ params }: Props) {
  const actor = await requirePermission("person.read");
  const page = await load(authorisationsView(actor, (await params).id, new Date()));
  return (
    <Page
      title={`Authorisations of ${page.name}`}
      crumbs={
        <Breadcrumb
          trail={[
            { label: "Staff", href: "/staff" },
            { label: page.name, href: `/staff/${page.personId}` },
          ]}
        />
      }
      lead="What this person may sign off, and on what they may state opinions. It is asked at the moment of each signature, for every result of the certificate."
    >
      {page.isSignatory ? null : (
        <Notice kind="info">
          {page.name} does not hold the role of signatory: an authorisation to sign off has no effect without
          it.
        </Notice>
      )}
      <Section title="Granted" note="The latest first; those that are over stay on record.">
        <AuthorisationList page={page} />
      </Section>
      {page.mayGrant ? (
        <Section title="Grant an authorisation" id="grant">
          <GrantForm page={page} />
        </Section>
      ) : page.isSelf ? (
        <Notice kind="info">Nobody authorises themselves: another quality manager grants yours.</Notice>
      ) : null}
    </Page>
  );
}
