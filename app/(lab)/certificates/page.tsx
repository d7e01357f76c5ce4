import type { Metadata } from "next";
import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { certificateListView } from "@/lib/views/certificate-list";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { SearchForm } from "./search-form";

export const metadata: Metadata = { title: "Certificates" };

type Props = { readonly searchParams: Promise<{ readonly q?: string | string[] }> };

export default async function CertificatesPage({ searchParams }: Props) {
  const actor = await requirePermission("certificate.read");
  const { q } = await searchParams;
  const search = typeof q === "string" ? q.trim().slice(0, 80) : "";
  const certificates = await load(certificateListView(actor, search));
  return (
    <Page title="Certificates" lead="What was signed off. Nothing here can be changed any more.">
      <SearchForm search={search} />
      <DataTable
        caption="Certificates, the newest first"
        captionUnseen
        columns={[
          { key: "number", header: "Certificate" },
          { key: "sensor", header: "Sensor" },
          { key: "customer", header: "Customer, order" },
          { key: "issued", header: "Issued" },
          { key: "signed", header: "Signed off by" },
          { key: "document", header: "Document" },
        ]}
        rows={certificates.map((line) => ({
          key: line.number,
          cells: {
            number: <Link href={`/certificates/${line.number}`}>{line.number}</Link>,
            sensor: (
              <>
                {line.tag} <TypeLetter letter={line.typeLetter} />{" "}
                <span className="quiet">{line.serial}</span>
              </>
            ),
            customer: (
              <>
                {line.customer}, <Link href={`/orders/${line.order}`}>{line.order}</Link>
              </>
            ),
            issued: line.issuedOn,
            signed: (
              <>
                {line.signedBy} {line.exception ? <StateMark state="exception" label="By policy" /> : null}
              </>
            ),
            document: line.isPending ? <StateMark state="pending" /> : <a href={line.href}>PDF</a>,
          },
        }))}
        empty={
          <EmptyState title={search ? "No certificate matches" : "No certificate yet"}>
            {search
              ? "Look for a number, a serial number, a tag, a customer or an order."
              : "A certificate comes here when a signatory signs off a result under Review."}
          </EmptyState>
        }
      />
    </Page>
  );
}
