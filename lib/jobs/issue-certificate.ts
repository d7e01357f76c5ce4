import type { Task } from "graphile-worker";
import { issueCertificate } from "@/lib/operations/certificate/issue";
import { issueSteps } from "@/lib/operations/certificate/issue-steps";
import type { Work } from "./work";

/** Makes and stores the files of one signed certificate. Given by `enqueueIssue`, under a key of that certificate's own. */
export const issueCertificateTask =
  ({ clock, seal }: Work): Task =>
  async (payload) => {
    const { certificateId } = payload as { readonly certificateId: string };
    await issueCertificate(certificateId, issueSteps(seal), clock);
  };
