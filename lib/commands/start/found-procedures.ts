/** A laboratory founded before procedures were records gets those that come with the platform, once. */
export async function foundProcedures(databaseUrl: string): Promise<void> {
  // Loaded only when needed: it brings the operations with it.
  const { ensureProcedures } = await import("@/lib/operations/procedure/install");
  const { closeDatabase, configureDatabase } = await import("@/lib/data/client");
  configureDatabase(databaseUrl);
  try {
    await ensureProcedures();
  } finally {
    await closeDatabase();
  }
}
