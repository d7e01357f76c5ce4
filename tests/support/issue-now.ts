import { issueCertificate } from "@/lib/operations/certificate/issue";
import { issuePending } from "@/lib/operations/certificate/issue-pending";
import { issueSteps } from "@/lib/operations/certificate/issue-steps";
import { makeSealer } from "@/lib/operations/seal/sealer";
import { signClock } from "./sign-run";
import { temporaryFolder } from "./temporary-folder";
import { testKeys } from "./test-keys";

/**
 * With keys that the test file's laboratory makes itself and takes up in its database, in force from the day of the
 * story on: the database takes no document that is older than its key.
 */
export const testSeal = makeSealer(testKeys(temporaryFolder()), signClock);

/** Does the worker's job of issuing in this process. */
export const issueNow = (certificateId: string, clock = signClock) =>
  issueCertificate(certificateId, issueSteps(testSeal), clock);

export const issueAllNow = (clock = signClock) => issuePending(testSeal, clock);
