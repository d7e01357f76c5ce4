import { CertificateContent } from "@/lib/domain/certificate/content";
import { besideAnchor, cutPage, portalPageSize, turnOf } from "@/lib/domain/list/page";
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

const shownOf = (text: string, token: string): PortalCertificate => {
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
};

type Asked = { readonly after?: string; readonly before?: string };

/** A customer's own certificates, the newest first, a page of them: row-level security shows no others. */
export const portalCertificatesView = (actor: Actor, asked: Asked = {}) =>
  answer(actor, "portal.read", async (tx) => {
    const turn = turnOf(asked);
    const rows = await tx.certificate.findMany({
      where: besideAnchor(turn),
      orderBy: { number: turn.kind === "before" ? "asc" : "desc" },
      select: { number: true, content: true, token: true },
      take: portalPageSize + 1,
    });
    const page = cutPage(rows, turn, ({ number }) => number, portalPageSize);
    return {
      certificates: page.rows.map(({ content, token }) => shownOf(content, token)),
      next: page.next,
      previous: page.previous,
    };
  });
