import type { Metadata } from "next";
import { CertificateName } from "@/app/_ui/certificate-name";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { FindForm } from "@/app/_ui/find-form";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { TypeLetter } from "@/app/_ui/type-letter";
import { readCertificateQuery } from "@/lib/domain/certificate/list-query";
import { certificateListView } from "@/lib/views/certificate-list";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata: Metadata = { title: "Traceability" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function TraceListPage({ searchParams }: Props) {
  const actor = await requirePermission("certificate.read");
  const query = readCertificateQuery(await searchParams);
  const { certificates, next, previous } = await load(certificateListView(actor, query));
  const search = query.q ?? "";
  return (
    <Page
      title="Traceability"
      lead="From each result through its standards and their certificates to the SI. Choose a certificate."
    >
      <FindForm path="/trace" name="q" label="Number, serial, tag, customer or order" value={search} />
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
            number: (
              <CertificateName number={line.number} standing={line.standing} href={`/trace/${line.number}`} />
            ),
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
      <PageTurns path="/trace" query={query} next={next} previous={previous} of="certificates" />
    </Page>
  );
}
