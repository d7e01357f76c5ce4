import { CertificateContent } from "@/lib/domain/certificate/content";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export type PortalCertificate = {
  readonly number: string;
  readonly token: string;
  readonly href: string;
  readonly serial: string;
  readonly tag: string;
  readonly typeLetter: string;
  readonly order: string;
  readonly purchaseOrder: string;
  readonly issuedOn: string;
  readonly from: string;
  readonly to: string;
};

/** A customer's own certificates, the newest first: row-level security shows no others. */
export const portalCertificatesView = (actor: Actor) =>
  answer(actor, "portal.read", async (tx) => {
    const rows = await tx.certificate.findMany({
      orderBy: { number: "desc" },
      select: { content: true, token: true },
    });
    return rows.map(({ content: text, token }): PortalCertificate => {
      const content = CertificateContent.parse(JSON.parse(text));
      const setpoints = content.rows.map((row) => row.setpoint);
      return {
        number: content.number,
        token,
        href: `/api/certificates/${token}`,
        serial: content.item.serial,
        tag: content.item.tag,
        typeLetter: content.item.typeLetter,
        order: content.order.number,
        purchaseOrder: content.order.purchaseOrder,
        issuedOn: content.issuedOn,
        from: setpoints[0] ?? "",
        to: setpoints.at(-1) ?? "",
      };
    });
  });
