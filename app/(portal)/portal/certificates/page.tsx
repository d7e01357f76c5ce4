import type { Metadata } from "next";
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
    <Page title="Your certificates" lead="One by one, or the ticked ones together as one ZIP file.">
      <CertificateChoice certificates={certificates} />
    </Page>
  );
}
