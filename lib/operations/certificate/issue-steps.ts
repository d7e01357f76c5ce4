import type { ToIssue } from "@/lib/data/certificate/load-to-issue";
import {
  certificateRendererVersion,
  renderCertificate,
} from "@/lib/documents/certificate/render-certificate";
import { type Attached, attachCertificate } from "@/lib/documents/issue/attach-certificate";
import type { Sealer } from "./sealer";

/** Each is done outside any transaction, and may be done again: what they give is stored once. */
export type IssueSteps = {
  readonly rendererVersion: string;
  readonly render: (given: ToIssue) => Promise<Uint8Array>;
  readonly attach: (given: ToIssue, pdf: Uint8Array) => Promise<Attached>;
  readonly seal: Sealer;
};

export const issueSteps = (seal: Sealer): IssueSteps => ({
  rendererVersion: certificateRendererVersion,
  render: ({ content, mark }) => renderCertificate(content, { draft: false, mark }),
  attach: ({ content, evidence, signedAt }, pdf) =>
    attachCertificate(pdf, { content, evidence, at: signedAt }),
  seal,
});
