import { CertificateContent } from "@/lib/domain/certificate/content";
import { evidenceBytes } from "@/lib/domain/certificate/evidence-file/evidence-bytes";
import type { Tx } from "../in-scope";
import { loadMarkBytes } from "../laboratory/load-mark";
import { evidenceMembers } from "./evidence-members";
import { loadEvidenceFile } from "./load-evidence-file";

/** What a certificate's files are made from; after this nothing asks the database, and the same gives the same bytes. */
export type ToIssue = {
  readonly id: string;
  readonly number: string;
  readonly content: CertificateContent;
  /** The bytes of the accreditation mark that the content names. */
  readonly mark: Uint8Array | undefined;
  /** The readings and inputs; under the seal themselves where they were ordered, else by their SHA-256. */
  readonly evidence: { readonly bytes: Uint8Array; readonly isAttached: boolean };
  readonly signedAt: Date;
};

/** Null: no such certificate. */
export const loadToIssue = async (tx: Tx, certificateId: string): Promise<ToIssue | null> => {
  const row = await tx.certificate.findUnique({ where: { id: certificateId } });
  if (!row) return null;
  const { id, number, signedAt } = row;
  const content = CertificateContent.parse(JSON.parse(row.content));
  const bytes = evidenceBytes(await loadEvidenceFile(tx, number, await evidenceMembers(tx, row)));
  const evidence = { bytes, isAttached: content.evidenceStatement !== undefined };
  return { id, number, signedAt, content, evidence, mark: await loadMarkBytes(tx, content) };
};
