import { checkFile } from "@/lib/documents/authenticity/check-file";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { attachCertificate } from "@/lib/documents/issue/attach-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { evidenceBytes } from "@/lib/domain/certificate/evidence-file/evidence-bytes";
import { type BenchKeys, benchKeys } from "./bench-keys";
import { benchBrowserCheck, benchBrowserRecompute } from "./browser-check";
import { heavyCertificate } from "./heavy-certificate";
import { heavySetpoints } from "./heavy-run";
import { compare } from "./measure";
import { fixed, printFigure } from "./print-figure";
import { benchTokens } from "./tokens";

const at = new Date("2026-10-16T09:00:00Z");
const address = `https://calibration.example/authenticity/${"bench".padEnd(43, "0")}`;

/** Everything that lies between a signed content and a document that can be sent. */
const issue = async (
  keys: BenchKeys,
  content: CertificateContent,
  evidence: Parameters<typeof attachCertificate>[1]["evidence"],
) => {
  const pdf = await renderCertificate(content, { draft: false });
  const attached = await attachCertificate(pdf, { content, evidence, at });
  return keys.seal(attached.pdf);
};

const demandPassed = async (keys: BenchKeys, file: Uint8Array): Promise<void> => {
  const { verdict, reason } = await checkFile(file, { keys: keys.list, now: at });
  if (verdict !== "total-passed") throw new Error(`the bench's own document: ${reason}`);
};

/** As large as the evidence of one sensor and its references over six hours; not attached, but named by its SHA-256. */
const named = { bytes: new Uint8Array(600_000), isAttached: false };

/** What a document costs from content to seal, what its check costs in a browser, and what a token gives away. */
export const benchDocuments = async (bare: CertificateContent): Promise<void> => {
  const keys = await benchKeys(at);
  const laboratory = { ...bare.laboratory, countryCode: "GB" };
  const content = { ...bare, laboratory, authenticity: { address } };
  const figure = await compare(
    {
      name: "Certificate issued",
      ours: "render, content and DCC attached, DCC held against our rules, seal, timestamp, check of the file",
      baseline: "a bare render of the same pages",
    },
    async () => demandPassed(keys, await issue(keys, content, named)),
    async () => {
      await renderCertificate(content, { draft: false });
    },
  );
  printFigure(figure);
  console.log(`  rate      ${fixed(60_000 / figure.oursMilliseconds)} certificates per minute`);
  const heavy = heavyCertificate(content);
  const what = `${heavy.sensors} sensors × ${heavySetpoints.length} setpoints`;
  const file = await issue(keys, heavy.content, { bytes: evidenceBytes(heavy.evidence), isAttached: true });
  await demandPassed(keys, file);
  await benchBrowserCheck(file, keys.list, at, what);
  await benchBrowserRecompute(heavy.content, heavy.evidence, what);
  await benchTokens(bare);
};
