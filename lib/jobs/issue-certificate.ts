import type { Task } from "graphile-worker";
import { renderDocument } from "@/lib/operations/certificate/render";
import type { Work } from "./work";

/** Makes and stores the files of one signed certificate. Given by `enqueueIssue`, under a key of that certificate's own. */
export const issueCertificate =
  ({ clock }: Work): Task =>
  async (payload) => {
    const { certificateId } = payload as { readonly certificateId: string };
    await renderDocument(certificateId, clock);
  };
