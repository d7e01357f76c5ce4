import { CertificateContent } from "@/lib/domain/certificate/content";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export type CertificateLine = {
  readonly number: string;
  readonly tag: string;
  readonly serial: string;
  readonly typeLetter: string;
  readonly customer: string;
  readonly order: string;
  readonly run: string;
  readonly issuedOn: string;
  readonly signedBy: string;
  readonly isPending: boolean;
  readonly href: string;
  readonly exception: boolean;
};

/** Every certificate, the newest first; `search` finds number, serial, tag, customer or order. */
export const certificateListView = (actor: Actor, search = "") =>
  answer(actor, "certificate.read", async (tx) => {
    const rows = await tx.certificate.findMany({
      orderBy: { number: "desc" },
      where: search ? { content: { contains: search, mode: "insensitive" } } : {},
      take: 200,
      select: { content: true, token: true, files: { select: { id: true } } },
    });
    return rows.map(({ content: text, token, files }): CertificateLine => {
      const content = CertificateContent.parse(JSON.parse(text));
      return {
        number: content.number,
        tag: content.item.tag,
        serial: content.item.serial,
        typeLetter: content.item.typeLetter,
        customer: content.customer.name,
        order: content.order.number,
        run: content.run.number,
        issuedOn: content.issuedOn,
        signedBy: content.authorisedBy.name,
        isPending: files.length === 0,
        href: `/api/certificates/${token}`,
        exception: content.evidence.exception !== "",
      };
    });
  });
