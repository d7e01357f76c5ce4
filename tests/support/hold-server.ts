import { startServer } from "@/lib/commands/postgres/server";

// Run as a process of its own, to be killed.
const server = await startServer({ folder: process.argv[2] ?? "", insisted: true, log: () => {} });
process.stdout.write(`ready ${server.port}\n`);
setInterval(() => {}, 1_000);
