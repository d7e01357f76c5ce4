/** Called once by Next when a server process begins. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME === "nodejs") {
    const { appendPeers } = await import("@/lib/web/append-peer");
    appendPeers();
    // Started by our supervisor, this process must not outlive it, not even when the supervisor is killed.
    process.on("disconnect", () => process.exit(0));
    // Next waits for open streams, which end only when the reader goes; three seconds are for answers on their way.
    process.on("SIGTERM", () => void setTimeout(() => process.exit(0), 3_000).unref());
  }
}
