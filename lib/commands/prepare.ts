import { ensureBuild } from "@/lib/commands/build";
import { runCommand } from "@/lib/commands/failure";
import { ensureGenerated } from "@/lib/commands/generate";

const log = (line: string) => void process.stdout.write(`${line}\n`);

// `npm run build`: what `npm start` would do before it serves, for an image that is made once and started often.
await runCommand(async () => {
  await ensureGenerated(log);
  const signOff = await ensureBuild(log);
  signOff();
  return 0;
});
process.exit();
