import { createHash } from "node:crypto";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { dccSchemaInUse } from "@/lib/documents/dcc/schema-in-use";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";

const sha256 = (bytes: Uint8Array): Uint8Array => createHash("sha256").update(bytes).digest();

/**
 * A certificate as XML, and what it breaks of the rules that one of ours has to keep, and of the schema where that is at
 * hand; null: nothing.
 */
export const ownDcc = (
  content: CertificateContent,
): { readonly xml: string; readonly broken: string | null } => {
  const xml = writeDcc(content, Buffer.from(contentHash(content, sha256)).toString("hex"));
  const [first, ...others] = checkDcc(xml, dccSchemaInUse());
  if (!first) return { xml, broken: null };
  const further = others.length > 0 ? `, and ${others.length} more` : "";
  return { xml, broken: `${first.message} (${first.path})${further}` };
};
