import { createHash } from "node:crypto";
import { verifyChain } from "@/lib/data/audit/verify-chain";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { encodeEvent, type StoredEvent } from "@/lib/domain/audit/chain";
import { compare, type Figure } from "./measure";

const events = 20_000;
const perTransaction = 2_000;

/** Fills the log through its only door. */
const fill = async (): Promise<void> => {
  for (let done = 0; done < events; done += perTransaction)
    await inScope({ kind: "laboratory" }, async (tx) => {
      await tx.$executeRaw`select audit_append('system:bench', 'bench.event', 'bench', n::text, '{"n":' || n || '}')
        from generate_series(${done + 1}::int, ${done + perTransaction}::int) as n`;
    });
};

/** Reads and checks the whole log, against SHA-256 over the same bytes already in memory. */
export const benchChain = async (runtimeUrl: string): Promise<Figure> => {
  configureDatabase(runtimeUrl);
  try {
    await fill();
    const stored: StoredEvent[] = [];
    await verifyChain({ onPage: (page) => stored.push(...page) });
    const encoded = stored.map(encodeEvent);
    return await compare(
      {
        name: `Verification of an audit chain of ${events} events`,
        ours: "verifyChain: read page by page, recompute, compare with the locked head",
        baseline: "SHA-256 of the same bytes in memory",
      },
      async () => {
        const verdict = await verifyChain();
        if (verdict.kind !== "whole") throw new Error(`chain broken at ${verdict.broken.sequence}`);
      },
      () => {
        for (const bytes of encoded) createHash("sha256").update(bytes).digest();
      },
      5,
    );
  } finally {
    await closeDatabase();
  }
};
