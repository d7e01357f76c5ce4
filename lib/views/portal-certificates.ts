import { loadStandings } from "@/lib/data/certificate/standing";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { itemsBeside } from "@/lib/domain/certificate/items-beside";
import type { Standing } from "@/lib/domain/certificate/standing";
import { besideAnchor, cutPage, portalPageSize, turnOf } from "@/lib/domain/list/page";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export type PortalCertificate = {
  readonly number: string;
  readonly token: string;
  readonly href: string;
  readonly serial: string;
  /** Sensors it speaks of beside this one: a lot's certificate. */
  readonly others: number;
  readonly tag: string;
  readonly typeLetter: string;
  readonly order: string;
  readonly purchaseOrder: string;
  readonly issuedOn: string;
  readonly from: string;
  readonly to: string;
  readonly standing: Standing;
  /** The number of the one it follows; null: it is the first. */
  readonly follows: string | null;
};

const shownOf = (text: string, token: string, standing: Standing): PortalCertificate => {
  const content = CertificateContent.parse(JSON.parse(text));
  const setpoints = content.rows.map((row) => row.setpoint);
  return {
    number: content.number,
    token,
    href: `/api/certificates/${token}`,
    serial: content.item.serial,
    others: itemsBeside(content),
    tag: content.item.tag,
    typeLetter: content.item.typeLetter,
    order: content.order.number,
    purchaseOrder: content.order.purchaseOrder,
    issuedOn: content.issuedOn,
    from: setpoints[0] ?? "",
    to: setpoints.at(-1) ?? "",
    standing,
    follows: content.amends?.number ?? null,
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
      select: { id: true, number: true, content: true, token: true },
      take: portalPageSize + 1,
    });
    const page = cutPage(rows, turn, ({ number }) => number, portalPageSize);
    const standings = await loadStandings(
      tx,
      page.rows.map(({ id }) => id),
    );
    return {
      certificates: page.rows.map(({ content, id, token }) =>
        shownOf(content, token, standings.get(id) ?? { kind: "valid" }),
      ),
      next: page.next,
      previous: page.previous,
    };
  });
