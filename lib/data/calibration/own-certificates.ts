import { loadStandings } from "@/lib/data/certificate/standing";
import type { Tx } from "@/lib/data/in-scope";
import { isCertificateOf } from "@/lib/domain/calibration/in-house-calibration";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { hasEnded } from "@/lib/domain/certificate/standing";
import type { Equipment } from "@/lib/domain/equipment/types";

export type OwnCertificate = { readonly id: string; readonly content: CertificateContent };

const read = ({ id, content }: { readonly id: string; readonly content: string }): OwnCertificate => ({
  id,
  content: CertificateContent.parse(JSON.parse(content)),
});

/** A certificate of ours by its number. */
export const loadOwnCertificate = async (tx: Tx, number: string): Promise<OwnCertificate | null> => {
  const row = await tx.certificate.findUnique({ where: { number }, select: { id: true, content: true } });
  return row && read(row);
};

/** Certificates of ours for this working standard that stand and are not among its calibrations yet, newest first. */
export const loadOwnCertificatesOf = async (tx: Tx, equipment: Equipment): Promise<OwnCertificate[]> => {
  if (equipment.particulars.kind !== "reference") return [];
  const laboratory = await tx.laboratory.findFirst({ select: { name: true } });
  const customers = await tx.customer.findMany({
    where: { name: { equals: laboratory?.name ?? "", mode: "insensitive" } },
    select: { id: true },
  });
  const taken = await tx.calibration.findMany({
    where: { equipmentId: equipment.id, inHouseCertificateId: { not: null } },
    select: { inHouseCertificateId: true },
  });
  const rows = await tx.certificate.findMany({
    where: {
      customerId: { in: customers.map(({ id }) => id) },
      id: { notIn: taken.flatMap(({ inHouseCertificateId }) => inHouseCertificateId ?? []) },
    },
    orderBy: { signedAt: "desc" },
    select: { id: true, content: true },
    take: 100,
  });
  const own = rows.map(read).filter(({ content }) => isCertificateOf(equipment, content));
  const standings = await loadStandings(
    tx,
    own.map(({ id }) => id),
  );
  return own.filter(({ id }) => !hasEnded(standings.get(id) ?? { kind: "valid" }));
};
