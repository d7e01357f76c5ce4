import { readFileSync, writeFileSync } from "node:fs";
import { Failure } from "@/lib/commands/failure";
import { sha256, toHex } from "@/lib/documents/authenticity/bytes";
import { checkFile } from "@/lib/documents/authenticity/check-file";
import { type CarriedEvidence, carriedEvidence } from "@/lib/documents/authenticity/numbers/carried-evidence";
import { computeNumbers } from "@/lib/documents/authenticity/numbers/compute-numbers";
import { type NumbersWords, numbersWords } from "@/lib/documents/authenticity/numbers/numbers-words";
import { offlinePage } from "@/lib/documents/authenticity/offline/offline-page";
import type { FileVerdict } from "@/lib/documents/authenticity/verdict";
import { wholeVerdict } from "@/lib/documents/authenticity/whole-verdict";
import type { KeyList } from "@/lib/domain/seal/key-list";
import { type AuthenticityArguments, authenticityArguments } from "./authenticity-arguments";
import { bundleOfflineCheck } from "./bundle-offline-check";
import { numbersLines } from "./numbers-lines";
import { readKeys } from "./read-keys";
import { verdictLines } from "./verdict-lines";

const HELP = `Checks a certificate without a network and without the laboratory.

  npm run --silent authenticity -- FILE.pdf [--keys KEYS.json] [--hash HASH] [--evidence FILE.json]
  npm run --silent authenticity -- --page OUT.html [--keys KEYS.json]

--keys   the laboratory's list of keys, from /.well-known/seal-keys.json of its own site;
         without it, that of the laboratory whose database is here; where there is none, the
         file is checked all the same, but whose seal it is cannot be told
--hash   what stands behind # in the code on paper, or the whole address
--evidence  the evidence file of the certificate, which its customer finds beside it: each printed
         number is computed again from it; where the document carries it, that is done by itself
--page   writes the same check as one HTML file to keep, with the list of keys in it

Ends with 0 if the file passed, 1 if it failed, 2 if it could not be decided or was not checked.
Whether a certificate was replaced or withdrawn, or the laboratory's log was changed since it
was signed, cannot be known offline: for that, open the address in the code on its pages.
`;

const NOT_DECIDED = 2;

/** The verdict is for the reader, what was done on the way is not: it goes to stderr. */
const log = (line: string) => void process.stderr.write(`${line}\n`);

type Check = AuthenticityArguments & { kind: "check" };

async function check({ file, keys: keyFile, paperHash, evidence }: Check): Promise<number> {
  const bytes = read(file);
  const keys = await keysOrNone(keyFile);
  const verdict = await checkFile(bytes, { keys, now: new Date() });
  const fileSha256 = toHex(await sha256(bytes));
  const whole = wholeVerdict(verdict, { fileSha256, paperHash, token: null, host: null, status: null, keys });
  process.stdout.write(`${verdictLines(file, whole, verdict, keys).join("\n")}\n`);
  const numbers = await computeAgain(verdict, evidence);
  if (numbers !== null) process.stdout.write(`${numbers.lines.join("\n")}\n`);
  const kinds = [whole.kind, numbers?.kind ?? "good"];
  return kinds.includes("bad") ? 1 : kinds.includes("look") ? NOT_DECIDED : 0;
}

type Numbers = { readonly kind: NumbersWords["kind"]; readonly lines: readonly string[] };

/** The numbers of a document that passed, from the evidence it carries or that was given; null where there is none. */
async function computeAgain(
  { verdict, content, attachments }: FileVerdict,
  given: string | null,
): Promise<Numbers | null> {
  const carried = carriedEvidence({ attachments });
  const bytes = given !== null ? read(given) : carried.kind === "attached" ? carried.bytes : null;
  if (bytes === null) return null;
  if (verdict !== "total-passed" || content === null)
    return told("The numbers were not computed again: the document did not pass.");
  // A file that was given is held against the attached one, like against the one that is named.
  const evidence: CarriedEvidence =
    carried.kind === "attached" && given !== null
      ? { kind: "named", sha256: toHex(await sha256(carried.bytes)) }
      : carried;
  try {
    const computed = await computeNumbers({ content, evidence }, bytes);
    const words = numbersWords(content.number, computed);
    return { kind: words.kind, lines: numbersLines(words, computed) };
  } catch (error) {
    return told(`Nothing was computed again: ${error instanceof Error ? error.message : String(error)}`);
  }
}

const told = (line: string): Numbers => ({ kind: "look", lines: ["", line] });

/** Without keys most of the check still holds: that nothing was changed since somebody sealed it. */
async function keysOrNone(file: string | null): Promise<KeyList> {
  if (file !== null) return readKeys(file, log);
  return readKeys(null, log).catch((error: unknown) => {
    if (!(error instanceof Failure)) throw error;
    log(error.message);
    const issuedAt = new Date().toISOString();
    return { format: "emfolio-key-list", version: 1, laboratory: "this check", issuedAt, keys: [] };
  });
}

async function writePage({ out, keys }: AuthenticityArguments & { kind: "page" }): Promise<number> {
  writeFileSync(out, await offlinePage(await bundleOfflineCheck(), await readKeys(keys, log)));
  process.stdout.write(`${out}: the check to keep. It opens in a browser without a network.\n`);
  return 0;
}

function read(file: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(file));
  } catch {
    throw new Failure(`${file} cannot be read: check the path and its permissions.`);
  }
}

async function run(): Promise<number> {
  const asked = authenticityArguments(process.argv.slice(2));
  switch (asked.kind) {
    case "help":
      process.stdout.write(HELP);
      return 0;
    case "refused":
      throw new Failure(asked.message);
    case "page":
      return writePage(asked);
    case "check":
      return check(asked);
  }
}

try {
  process.exitCode = await run();
} catch (error) {
  if (!(error instanceof Failure)) throw error;
  log(error.message);
  process.exitCode = NOT_DECIDED;
}
