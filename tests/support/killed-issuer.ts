import { configureDatabase } from "@/lib/data/client";
import { issueCertificate } from "@/lib/operations/certificate/issue";
import { issueSteps } from "@/lib/operations/certificate/issue-steps";

/** A process that issues the certificate named, and is killed when the document is finished and not yet sealed. */
const [certificateId = ""] = process.argv.slice(2);
configureDatabase(process.env.DATABASE_URL ?? "");
const steps = issueSteps(() => {
  process.kill(process.pid, "SIGKILL");
  return new Promise(() => {});
});
await issueCertificate(certificateId, steps, () => new Date());
