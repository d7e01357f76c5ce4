import type { ReadyDatabase } from "@/lib/commands/start/prepare-database";
import type { Settings } from "@/lib/commands/start/settings";
import type { SignIn } from "@/prisma/seed/people";

type Ready = {
  readonly settings: Settings;
  readonly database: ReadyDatabase;
  readonly signIns: readonly SignIn[] | undefined;
  readonly mailFolder: string;
};

/** Where it is and how to come in. */
export async function announce(
  { settings, database, signIns, mailFolder }: Ready,
  log: (line: string) => void,
): Promise<void> {
  log(`\nEmfolio is at ${settings.publicUrl}\n`);
  if (signIns !== undefined) {
    log("The demo laboratory (invented) lets you in as:");
    const width = Math.max(0, ...signIns.map(({ role }) => role.length));
    const widest = Math.max(0, ...signIns.map(({ email }) => email.length));
    for (const { role, email, password } of signIns)
      log(`  ${role.padEnd(width)}  ${email.padEnd(widest)}  ${password}`);
    for (const { email, codeKey } of signIns)
      if (codeKey !== undefined)
        log(
          `${email} signs in and signs certificates with one-time codes as well: put this key into an\nauthenticator (RFC 6238, SHA-1, 6 digits, 30 s). In the demonstration only it is told here:\n  ${codeKey}\nWithout an authenticator, this prints the present code: npm run --silent code -- ${codeKey}`,
        );
  } else {
    const { createFirstAccessLink } = await import("@/lib/operations/staff/first-access");
    const link = await createFirstAccessLink({
      databaseUrl: database.runtimeUrl,
      publicUrl: settings.publicUrl,
    });
    if (link !== undefined)
      log(`Nobody can sign in yet. This link, good once, makes the first quality manager:\n  ${link}`);
  }
  if (settings.smtpUrl === undefined)
    log(`\nNo mail server is set (SMTP_URL): messages are kept as files in ${mailFolder}`);
  log("\nCtrl-C stops it.");
}
