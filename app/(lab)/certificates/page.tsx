import type { Metadata } from "next";
import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { FilterLinks } from "@/app/_ui/filter-links";
import { FindForm } from "@/app/_ui/find-form";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { StandingMark } from "@/app/_ui/standing-mark";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { andMore } from "@/lib/domain/certificate/items-beside";
import { readCertificateQuery } from "@/lib/domain/certificate/list-query";
import { hasDocument } from "@/lib/domain/certificate/standing";
import { addressOf, changed } from "@/lib/domain/list/query";
import { certificateListView } from "@/lib/views/certificate-list";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { NoCertificates } from "./no-certificates";

export const metadata: Metadata = { title: "Certificates" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function CertificatesPage({ searchParams }: Props) {
  const actor = await requirePermission("certificate.read");
  const query = readCertificateQuery(await searchParams);
  const { certificates, next, previous, customer } = await load(certificateListView(actor, query));
  const links = [
    {
      label: "Document pending",
      isOn: query.only === "pending",
      href: addressOf("/certificates", changed(query, { only: query.only ? undefined : "pending" })),
    },
    ...(query.customer
      ? [
          {
            label: customer ?? "Customer",
            isOn: true,
            href: addressOf("/certificates", changed(query, { customer: undefined })),
          },
        ]
      : []),
  ];
  return (
    <Page
      title="Certificates"
      lead="What was signed off. Nothing here can be changed; what became of it stands beside it."
    >
      <FindForm
        path="/certificates"
        name="q"
        label="Number, serial, tag, customer or order"
        value={query.q ?? ""}
        kept={{ customer: query.customer, only: query.only, from: query.from, to: query.to }}
      />
      <FilterLinks label="Only" links={links} />
      <DataTable
        caption="Certificates, the newest first"
        captionUnseen
        columns={[
          { key: "number", header: "Certificate" },
          { key: "sensor", header: "Sensor" },
          { key: "customer", header: "Customer, order" },
          { key: "issued", header: "Issued" },
          { key: "signed", header: "Signed off by" },
          { key: "standing", header: "Standing" },
          { key: "document", header: "Document" },
        ]}
        rows={certificates.map((line) => ({
          key: line.number,
          cells: {
            number: <Link href={`/certificates/${line.number}`}>{line.number}</Link>,
            sensor: (
              <>
                {line.tag} <TypeLetter letter={line.typeLetter} />{" "}
                <span className="quiet">{andMore(line.serial, line.others)}</span>
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
            standing: <StandingMark standing={line.standing} />,
            document: hasDocument(line.standing) ? <a href={line.href}>PDF</a> : "—",
          },
        }))}
        empty={<NoCertificates query={query} />}
      />
      <PageTurns path="/certificates" query={query} next={next} previous={previous} of="certificates" />
    </Page>
  );
}
