import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { auditHeadRow } from "@/lib/data/sql/audit-head";
import {
  type ChainBreak,
  type ChainHead,
  chainBeginning,
  closeChain,
  followChain,
  type StoredEvent,
} from "@/lib/domain/audit/chain";

export type ChainVerdict =
  | { readonly kind: "whole"; readonly events: number; readonly head: ChainHead }
  | { readonly kind: "broken"; readonly broken: ChainBreak; readonly events: number };

type Options = {
  readonly pageSize?: number;
  /** A place already verified, to go on from there. */
  readonly from?: ChainHead;
  /** Called with each page that holds, in order: `rederive` reads the events on the same way. */
  readonly onPage?: (events: readonly StoredEvent[]) => void;
};

const laboratory = { kind: "laboratory" } as const;

const readPage = (after: bigint, upTo: bigint, take: number): Promise<StoredEvent[]> =>
  inScope(laboratory, (tx) =>
    tx.auditEvent.findMany({
      where: { sequence: { gt: after, lte: upTo } },
      orderBy: { sequence: "asc" },
      take,
    }),
  );

/**
 * Recomputes the whole chain from its beginning to where its head stood at the start, a page at a time, and names the
 * first event that does not hold. Opens its own short transactions: call it outside of one.
 */
export const verifyChain = async ({
  pageSize = 5000,
  from = chainBeginning,
  onPage,
}: Options = {}): Promise<ChainVerdict> => {
  const head = await inScope(laboratory, auditHeadRow);
  if (!head) return { kind: "broken", broken: { sequence: 0n, reason: "cut" }, events: 0 };
  let reached = from;
  const verdict = (broken: ChainBreak): ChainVerdict => ({
    kind: "broken",
    broken,
    events: Number(reached.sequence),
  });
  for (;;) {
    const page = await readPage(reached.sequence, head.last, pageSize);
    for (const event of page) {
      const step = followChain(reached, event, sha256);
      if (!step.ok) return verdict(step.broken);
      reached = step.head;
    }
    onPage?.(page);
    if (page.length < pageSize) break;
  }
  const broken = closeChain(reached, head);
  return broken ? verdict(broken) : { kind: "whole", events: Number(reached.sequence), head: reached };
};
