import { Hash } from "@/app/_ui/hash";
import { Notice } from "@/app/_ui/notice";
import type { chainVerdictView } from "@/lib/views/audit-log";

type Props = { readonly verdict: Awaited<ReturnType<typeof chainVerdictView>> };

const vouched = (certificates: number): string =>
  certificates === 0
    ? "No certificate vouches for it yet."
    : `It is the log that ${certificates === 1 ? "1 certificate was" : `${certificates} certificates were`} signed over.`;

/** Whether the log holds, in words, and what to do where it does not. */
export function LogVerdict({ verdict }: Props) {
  switch (verdict.kind) {
    case "whole":
      return (
        <div className="row">
          <span>
            Recomputed just now: all {verdict.events} events follow from one another.{" "}
            {vouched(verdict.certificates)} Head of the chain:
          </span>
          <Hash value={verdict.head} label="Head of the chain" />
        </div>
      );
    case "broken":
      return (
        <Notice kind="danger" title="The chain does not verify">
          {verdict.what} The {verdict.events} events before it hold. Stop work on the records, keep a copy of
          the database as it is, and find out who can write to it.
        </Notice>
      );
    case "rewritten":
      return (
        <Notice kind="danger" title="This is not the log that certificates were signed over">
          Stop work on the records. {verdict.what} Its {verdict.events} events follow from one another all the
          same: chain and head alone do not show it.
        </Notice>
      );
  }
}
