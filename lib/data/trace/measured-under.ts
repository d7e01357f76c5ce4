import { CertificateContent } from "@/lib/domain/certificate/content";
import type { Tx } from "../in-scope";

type Signed = { readonly number: string; readonly signedAt: Date };

/**
 * The certificate under which these results were first stated: an amendment corrects words and measures nothing, so that
 * its results stand in the chain that was frozen with the one it amends.
 */
export const measuredUnder = async (
  tx: Tx,
  signed: Signed,
  { amends }: Pick<CertificateContent, "amends">,
): Promise<Signed> => {
  if (amends?.kind !== "amendment") return signed;
  const earlier = await tx.certificate.findUniqueOrThrow({ where: { number: amends.number } });
  return measuredUnder(tx, earlier, CertificateContent.parse(JSON.parse(earlier.content)));
};
