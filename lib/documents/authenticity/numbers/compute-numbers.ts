import type { CertificateContent } from "@/lib/domain/certificate/content";
import { EvidenceFile } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { proveReadings } from "@/lib/domain/certificate/evidence-file/prove-readings";
import { type Progress, type Recomputation, recomputing } from "@/lib/domain/certificate/recompute/recompute";
import { engineVersion } from "@/lib/metrology/engine-version";
import { joined, sha256, toHex } from "../bytes";
import type { CarriedEvidence } from "./carried-evidence";

export type ComputedNumbers = Recomputation & {
  /** Of each part: what its readings are not, where its blocks do not prove them. */
  readonly unproved: readonly string[];
  readonly readings: number;
  /** Whether the sealed document speaks of this very file: unsaid where it was sealed before it named one. */
  readonly file: "sealed" | "another" | "unsaid";
  /** Versions of the engine: the printed figures', and the one that computed again. */
  readonly engine: { readonly printed: string; readonly here: string };
};

const readEvidence = (bytes: Uint8Array): EvidenceFile => {
  let json: unknown;
  try {
    json = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    throw new Error("the file is no JSON. Choose the evidence file that belongs to this certificate.");
  }
  const parsed = EvidenceFile.safeParse(json);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw new Error(
    `the file is no evidence of a certificate: ${issue?.path.join(".") || "its form"}: ${issue?.message}`,
  );
};

const unprovedOf = async (file: EvidenceFile): Promise<readonly string[]> => {
  const told: string[] = [];
  for (const part of file.parts) {
    const problem = await proveReadings(part, (parts) => sha256(joined(parts)));
    if (problem) told.push(`Run ${part.run}: ${problem}`);
  }
  return told;
};

const standingOf = async (evidence: CarriedEvidence, bytes: Uint8Array): Promise<ComputedNumbers["file"]> => {
  if (evidence.kind === "attached") return "sealed";
  if (evidence.kind === "none") return "unsaid";
  return toHex(await sha256(Uint8Array.from(bytes))) === evidence.sha256 ? "sealed" : "another";
};

/**
 * Computes every printed figure of a document again from the bytes of its evidence file, table by table; `between` waits
 * so that a page can draw. Throws, in words for its reader, where the file is none.
 */
export const computeNumbers = async (
  { content, evidence }: { readonly content: CertificateContent; readonly evidence: CarriedEvidence },
  bytes: Uint8Array,
  between: (progress: Progress) => Promise<void> = async () => {},
): Promise<ComputedNumbers> => {
  const file = readEvidence(bytes);
  const steps = recomputing(content, file);
  let step = steps.next();
  while (!step.done) {
    await between(step.value);
    step = steps.next();
  }
  return {
    ...step.value,
    unproved: await unprovedOf(file),
    file: await standingOf(evidence, bytes),
    readings: file.parts
      .flatMap(({ evidence }) => evidence.scans.channels)
      .reduce((sum, { seconds }) => sum + seconds.length, 0),
    engine: { printed: content.evidence.engineVersion, here: engineVersion },
  };
};
