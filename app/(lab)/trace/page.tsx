import type { Metadata } from "next";
import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { TypeLetter } from "@/app/_ui/type-letter";
import { SearchForm } from "@/app/(lab)/certificates/search-form";
import { certificateListView } from "@/lib/views/certificate-list";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata: Metadata = { title: "Traceability" };

type Props = { readonly searchParams: Promise<{ readonly q?: string | string[] }> };

export default async function TraceListPage({ searchParams }: Props) {
  const actor = await requirePermission("certificate.read");
  const { q } = await searchParams;
  const search = typeof q === "string" ? q.trim().slice(0, 80) : "";
  const certificates = await load(certificateListView(actor, search));
  return (
    <Page
      title="Traceability"
      lead="From each result through its standards and their certificates to the SI. Choose a certificate."
    >
      <SearchForm search={search} />
      <DataTable
        caption="Certificates whose chain can be drawn"
        captionUnseen
        columns={[
          { key: "number", header: "Certificate" },
          { key: "sensor", header: "Sensor" },
          { key: "customer", header: "Customer" },
          { key: "run", header: "Run" },
        ]}
        rows={certificates.map((line) => ({
          key: line.number,
          cells: {
            number: <Link href={`/trace/${line.number}`}>{line.number}</Link>,
            sensor: (
              <>
                {line.tag} <TypeLetter letter={line.typeLetter} />{" "}
                <span className="quiet">{line.serial}</span>
              </>
            ),
            customer: line.customer,
            run: line.run,
          },
        }))}
        empty={
          <EmptyState title={search ? "No certificate matches" : "Nothing to trace yet"}>
            {search
              ? "Look for a number, a serial number, a tag, a customer or an order."
              : "The chain of a result can be drawn once its certificate is signed off."}
          </EmptyState>
        }
      />
    </Page>
  );
}
