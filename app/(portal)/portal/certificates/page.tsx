import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { portalCertificateSumView } from "@/lib/views/portal/certificate-sum";
import { portalCertificatesView } from "@/lib/views/portal-certificates";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CertificateChoice } from "../certificate-choice";
import { turnIn } from "../turn-in";

export const metadata: Metadata = { title: "Your certificates" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function PortalCertificatesPage({ searchParams }: Props) {
  const actor = await requireCustomer();
  const query = turnIn(await searchParams);
  const { certificates, next, previous } = await load(portalCertificatesView(actor, query));
  const { count, size } = await load(portalCertificateSumView(actor));
  return (
    <Page
      title="Your certificates"
      lead="One by one, the ticked ones together as one ZIP file, or all of them."
      actions={
        certificates.length > 0 ? (
          <>
            <LinkButton href="/api/portal/certificates" download>
              All {count} of them (ZIP, {(size / 1_000_000).toFixed(1)} MB)
            </LinkButton>
            <LinkButton href="/api/portal/results" download>
              All results as a table (CSV)
            </LinkButton>
          </>
        ) : null
      }
    >
      <CertificateChoice certificates={certificates} />
      <PageTurns
        path="/portal/certificates"
        query={query}
        next={next}
        previous={previous}
        of="certificates"
      />
    </Page>
  );
}
