import { loadStandings } from "@/lib/data/certificate/standing";
import { certificatePage } from "@/lib/data/sql/certificate-page";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { itemsBeside } from "@/lib/domain/certificate/items-beside";
import type { CertificateQuery } from "@/lib/domain/certificate/list-query";
import type { Standing } from "@/lib/domain/certificate/standing";
import { cutPage, turnOf } from "@/lib/domain/list/page";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export type CertificateLine = {
  readonly number: string;
  readonly tag: string;
  readonly serial: string;
  /** Sensors it speaks of beside this one: a lot's certificate. */
  readonly others: number;
  readonly typeLetter: string;
  readonly customer: string;
  readonly order: string;
  readonly run: string;
  readonly issuedOn: string;
  readonly signedBy: string;
  readonly standing: Standing;
  readonly href: string;
  readonly exception: boolean;
};

type Row = { readonly content: string; readonly token: string };

const lineOf = ({ content: text, token }: Row, standing: Standing): CertificateLine => {
  const content = CertificateContent.parse(JSON.parse(text));
  return {
    number: content.number,
    tag: content.item.tag,
    serial: content.item.serial,
    others: itemsBeside(content),
    typeLetter: content.item.typeLetter,
    customer: content.customer.name,
    order: content.order.number,
    run: content.run.number,
    issuedOn: content.issuedOn,
    signedBy: content.authorisedBy.name,
    standing,
    href: `/api/certificates/${token}`,
    exception: content.evidence.exception !== "",
  };
};

/** One page of certificates, the newest first; `q` finds number, serial, tag, customer or order. */
export const certificateListView = (actor: Actor, query: CertificateQuery) =>
  answer(actor, "certificate.read", async (tx) => {
    const turn = turnOf(query);
    const page = cutPage(await certificatePage(tx, query, turn), turn, ({ name }) => name);
    const rows = await tx.certificate.findMany({
      where: { id: { in: page.rows.map(({ id }) => id) } },
      select: { id: true, content: true, token: true },
    });
    const standings = await loadStandings(
      tx,
      rows.map(({ id }) => id),
    );
    const byId = new Map(rows.map((row) => [row.id, row]));
    const customer = query.customer
      ? await tx.customer.findUnique({ where: { id: query.customer }, select: { name: true } })
      : null;
    return {
      customer: customer?.name ?? null,
      next: page.next,
      previous: page.previous,
      certificates: page.rows.flatMap(({ id }) => {
        const row = byId.get(id);
        return row ? [lineOf(row, standings.get(id) ?? { kind: "valid" })] : [];
      }),
    };
  });
