import { loadStanding, loadStandings } from "@/lib/data/certificate/standing";
import { hex } from "@/lib/data/hex";
import { inSnapshot } from "@/lib/data/in-scope";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { type Program, programScope } from "@/lib/domain/machine/program";
import {
  ToldContent,
  type WireCertificate,
  type WireCertificatePage,
  wireStandingOf,
} from "@/lib/domain/machine/wire/certificate";
import { ofThese, pageSize } from "./wire-orders";

const contentOf = (text: string): CertificateContent => CertificateContent.parse(JSON.parse(text));

/** A page of the certificates a program may see; row-level security shows it no others. */
export const wireCertificatesView = (program: Program, after: string | null): Promise<WireCertificatePage> =>
  inSnapshot(programScope(program), async (tx) => {
    const rows = await tx.certificate.findMany({
      where: ofThese(program, after),
      select: { id: true, content: true, contentHash: true },
      orderBy: { number: "desc" },
      take: pageSize + 1,
    });
    const standings = await loadStandings(
      tx,
      rows.map(({ id }) => id),
    );
    const certificates = rows.slice(0, pageSize).map(({ content: text, contentHash, id }) => {
      const { number, item, order, issuedOn } = ToldContent.parse(JSON.parse(text));
      const { serial, tag } = item;
      return {
        ...{ number, serial, tag, order: order.number, purchaseOrder: order.purchaseOrder, issuedOn },
        contentHash: hex(contentHash),
        standing: wireStandingOf(standings.get(id) ?? { kind: "valid" }),
      };
    });
    return { certificates, next: rows.length > pageSize ? (certificates.at(-1)?.number ?? null) : null };
  });

/** What one says, and the address of its document; or null: not there, or not theirs. */
export const wireCertificateView = (
  program: Program,
  number: string,
): Promise<(WireCertificate & { readonly token: string }) | null> =>
  inSnapshot(programScope(program), async (tx) => {
    const row = await tx.certificate.findUnique({ where: { number } });
    return (
      row && {
        contentHash: hex(row.contentHash),
        content: contentOf(row.content),
        token: row.token,
        standing: wireStandingOf(await loadStanding(tx, row.id)),
      }
    );
  });
