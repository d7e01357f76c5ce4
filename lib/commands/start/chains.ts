import type { ReadyDatabase } from "@/lib/commands/start/prepare-database";

/** Freezes the chains of certificates that were signed off before chains were kept; says so, and nothing otherwise. */
export async function ensureChains(database: ReadyDatabase, log: (line: string) => void): Promise<void> {
  // Loaded only when needed: they bring the whole product with them.
  const [{ closeDatabase, configureDatabase }, { inScope }, { unfrozenCertificates }] = await Promise.all([
    import("@/lib/data/client"),
    import("@/lib/data/in-scope"),
    import("@/lib/data/sql/unfrozen-certificates"),
  ]);
  configureDatabase(database.runtimeUrl);
  try {
    const left = async () => (await inScope({ kind: "laboratory" }, unfrozenCertificates)).length;
    if ((await left()) === 0) return;
    const [{ execute }, { freezeMissingChains }] = await Promise.all([
      import("@/lib/operations/execute"),
      import("@/lib/operations/trace/freeze-missing"),
    ]);
    const system = { kind: "system", name: "start" } as const;
    for (let count = await left(); count > 0; count = await left()) {
      log(`Freezing the chains of ${count} certificates signed off before chains were kept`);
      await execute(freezeMissingChains, system, {}, () => new Date());
    }
  } finally {
    await closeDatabase();
  }
}
