import { Failure, runCommand } from "@/lib/commands/failure";
import { secretOfKey } from "@/lib/domain/account/key-uri";
import { codeAt, stepOf, stepSeconds } from "@/lib/operations/one-time-code";

const secretOf = (key: string): Uint8Array => {
  const secret = secretOfKey(key);
  if (!secret)
    throw new Failure("Say for which key: npm run --silent code -- KEY, as it is printed (A to Z, 2 to 7).");
  return secret;
};

// `npm run --silent code -- KEY`: what an authenticator would show now, for whoever tries the demonstration without one.
await runCommand(async () => {
  const now = new Date();
  const left = stepSeconds - (Math.floor(now.getTime() / 1000) % stepSeconds);
  process.stdout.write(
    `${codeAt(secretOf(process.argv[2] ?? ""), stepOf(now))} (for ${left} more seconds)\n`,
  );
  return 0;
});
