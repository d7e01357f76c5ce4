import { runCommand } from "@/lib/commands/failure";
import { start } from "@/lib/commands/start/start";

// The same as `npm start`, with pages that follow the sources as they are edited.
await runCommand(() => start("dev", process.argv.slice(2)));
process.exit();
