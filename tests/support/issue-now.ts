import { issueCertificate } from "@/lib/operations/certificate/issue";
import { issuePending } from "@/lib/operations/certificate/issue-pending";
import { issueSteps } from "@/lib/operations/certificate/issue-steps";
import type { Sealer } from "@/lib/operations/certificate/sealer";
import { signClock } from "./sign-run";

export const testSeal: Sealer = async (pdf) => ({ bytes: pdf, fingerprint: "5e".repeat(32) });

/** Does the worker's job of issuing in this process. */
export const issueNow = (certificateId: string, clock = signClock) =>
  issueCertificate(certificateId, issueSteps(testSeal), clock);

export const issueAllNow = (clock = signClock) => issuePending(testSeal, clock);
