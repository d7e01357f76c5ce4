import type { PaperHash } from "@/lib/domain/authenticity/paper-hash";
import { readTypedHash } from "@/lib/domain/authenticity/typed-hash";

export type AuthenticityArguments =
  | { readonly kind: "help" }
  | { readonly kind: "refused"; readonly message: string }
  | { readonly kind: "page"; readonly out: string; readonly keys: string | null }
  | {
      readonly kind: "check";
      readonly file: string;
      readonly keys: string | null;
      readonly paperHash: PaperHash;
      /** The evidence to compute the numbers from, where it is not in the document. */
      readonly evidence: string | null;
    };

const options = ["--keys", "--hash", "--evidence", "--page"] as const;
type Option = (typeof options)[number];
const isOption = (text: string): text is Option => (options as readonly string[]).includes(text);

const refused = (message: string): AuthenticityArguments => ({ kind: "refused", message });

/** What stands on the command line; whatever is not understood is refused, never passed over. */
export const authenticityArguments = (parameters: readonly string[]): AuthenticityArguments => {
  if (parameters.includes("--help") || parameters.includes("-h")) return { kind: "help" };
  const given = new Map<Option, string>();
  const files: string[] = [];
  for (let i = 0; i < parameters.length; i += 1) {
    const parameter = parameters[i] as string;
    if (!parameter.startsWith("-")) {
      files.push(parameter);
      continue;
    }
    const value = parameters[i + 1];
    if (!isOption(parameter)) return refused(`There is no option ${parameter}: see --help.`);
    if (value === undefined || value.startsWith("--"))
      return refused(`${parameter} takes a value: see --help.`);
    given.set(parameter, value);
    i += 1;
  }
  const keys = given.get("--keys") ?? null;
  const out = given.get("--page");
  if (out !== undefined)
    return files.length > 0 || given.has("--hash") || given.has("--evidence")
      ? refused("--page writes the page to keep, and checks no file: give it alone or with --keys.")
      : { kind: "page", out, keys };
  const [file] = files;
  if (file === undefined || files.length > 1) return refused("Name one certificate (PDF): see --help.");
  const paperHash = readTypedHash(given.get("--hash") ?? "");
  if (paperHash.kind === "address")
    return refused(
      "The address alone names the document: give --hash what stands behind # in the code, or the Content SHA-256 printed at the foot.",
    );
  if (paperHash.kind === "broken")
    return refused(
      "--hash takes what stands behind # in the code on paper: 64 hexadecimal digits, or 43 signs.",
    );
  return { kind: "check", file, keys, paperHash, evidence: given.get("--evidence") ?? null };
};
