import { loadToIssue, type ToIssue } from "@/lib/data/certificate/load-to-issue";
import { loadStanding } from "@/lib/data/certificate/standing";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import type { IssueStepName } from "@/lib/domain/certificate/issue-step";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import type { IssueSteps } from "./issue-steps";
import { noteAttempt } from "./note-attempt";
import { storeFiles } from "./store-files";

const issuer = { kind: "system", name: "issuer" } as const;

/** Long enough for a reason, too short for a document that stands in a message by mistake. */
const longestDetail = 1000;

/** Null: it has its files, or it ended without them and gets none. */
const loadPending = (certificateId: string): Promise<ToIssue | null> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const { kind } = await loadStanding(tx, certificateId);
    return kind === "pending" ? loadToIssue(tx, certificateId) : null;
  });

/** One step; what goes wrong in it is written down under its name and thrown on, so that the job comes back. */
const inStep = async <T>(
  certificateId: string,
  step: IssueStepName,
  clock: Clock,
  work: () => Promise<T>,
): Promise<T> => {
  try {
    return await work();
  } catch (error) {
    if (isStoredAlready(error)) throw error;
    const detail = (error instanceof Error ? error.message : String(error)).slice(0, longestDetail);
    await execute(noteAttempt, issuer, { certificateId, step, detail }, clock);
    throw error;
  }
};

const isStoredAlready = (error: unknown): boolean =>
  error instanceof Refused && error.refusal.code === "wrong-state";

/**
 * Renders, attaches, seals and stores the files of one signed certificate. Everything but the storing happens outside
 * any transaction and leaves nothing behind, so that it may be cut short at any point and done again, from two places
 * at once if need be: what is stored first stays.
 */
export const issueCertificate = async (
  certificateId: string,
  steps: IssueSteps,
  clock: Clock,
): Promise<"issued" | "nothing to do"> => {
  const given = await inStep(certificateId, "render", clock, () => loadPending(certificateId));
  if (!given) return "nothing to do";
  const rendered = await inStep(certificateId, "render", clock, () => steps.render(given));
  const { pdf, dcc } = await inStep(certificateId, "attach", clock, () => steps.attach(given, rendered));
  const sealed = await inStep(certificateId, "seal", clock, () => steps.seal(pdf));
  const input = {
    ...{ certificateId, rendererVersion: steps.rendererVersion, dcc: Uint8Array.from(dcc) },
    ...{
      pdf: Uint8Array.from(sealed.bytes),
      sealFingerprint: sealed.fingerprint,
      unsealedSha256: hex(sha256(pdf)),
    },
  };
  try {
    await inStep(certificateId, "store", clock, () => execute(storeFiles, issuer, input, clock));
  } catch (error) {
    if (isStoredAlready(error)) return "nothing to do";
    throw error;
  }
  return "issued";
};
