import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { portalCertificatesView } from "@/lib/views/portal-certificates";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CertificateChoice } from "../certificate-choice";

export const metadata: Metadata = { title: "Your certificates" };

export default async function PortalCertificatesPage() {
  const actor = await requireCustomer();
  const certificates = await load(portalCertificatesView(actor));
  return (
    <Page
      title="Your certificates"
      lead="One by one, the ticked ones together as one ZIP file, or all of them."
      actions={
        certificates.length > 0 ? (
          <>
            <LinkButton href="/api/portal/certificates" download>
              All of them (ZIP)
            </LinkButton>
            <LinkButton href="/api/portal/results" download>
              All results as a table (CSV)
            </LinkButton>
          </>
        ) : null
      }
    >
      <CertificateChoice certificates={certificates} />
    </Page>
  );
}
