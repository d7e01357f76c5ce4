import type { DccCertificate } from "@/lib/domain/calibration/dcc-certificate";
import type { DccProposals } from "@/lib/domain/calibration/dcc-proposal";
import type { Equipment } from "@/lib/domain/equipment/types";
import { knownSchemaFolder } from "./known-schema-folder";
import { readDcc } from "./read-dcc";
import { tableForReference } from "./table-for-reference";

/** A digital certificate that was read and kept before, with what it proposes for this equipment. */
export const readKeptDcc = (
  bytes: Uint8Array,
  { particulars }: Pick<Equipment, "particulars">,
  schemaFolder: string | null = null,
): { readonly certificate: DccCertificate; readonly proposals: DccProposals } | null => {
  const outcome = readDcc(bytes, knownSchemaFolder(schemaFolder));
  if (!outcome.ok) return null;
  const type = particulars.kind === "reference" ? particulars.type : undefined;
  const proposals = tableForReference(outcome.certificate, type);
  const offers = proposals.offers.filter(({ kind }) => kind === particulars.kind);
  return { certificate: outcome.certificate, proposals: { ...proposals, offers } };
};
