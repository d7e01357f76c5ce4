import { readFileSync, statSync } from "node:fs";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { Evaluation, EvidenceProblem } from "@/lib/domain/evidence/evaluation";
import { evidenceJsonSchema } from "@/lib/domain/evidence/json-schema";

const HELP = `Evaluates evidence files and prints the results as JSON.

  npm run --silent evaluate -- FILE.json [FILE.json …]
  npm run --silent evaluate -- --schema    the JSON Schema of the evidence file
  npm run --silent evaluate -- --help

Output: { "files": [ { "file", "engineVersion", "points", "findings" } ] }.
Each point has every number unrounded, and under "printed" as a document shows it.
Errors go to stderr, one JSON object a line with "file", "path" (the place in the file)
and "message"; the exit code is then 2, and nothing is printed on stdout.
`;

const EXIT_REFUSED = 2;
const LARGEST_BYTES = 256 * 1024 * 1024;

type Problem = EvidenceProblem & { readonly file: string };
type Read = { readonly ok: true; readonly input: unknown } | { readonly ok: false; readonly message: string };

function readJson(file: string): Read {
  let text: string;
  try {
    const { size } = statSync(file);
    if (size > LARGEST_BYTES) {
      return { ok: false, message: `The file has ${size} bytes; at most ${LARGEST_BYTES} are read.` };
    }
    // ignoreBOM false takes a byte-order mark off; fatal refuses what is not text.
    text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: false }).decode(readFileSync(file));
  } catch (error) {
    return { ok: false, message: whyUnreadable(error) };
  }
  if (text.trim() === "") return { ok: false, message: "The file is empty: give an evidence file (JSON)." };
  try {
    return { ok: true, input: JSON.parse(text) };
  } catch (error) {
    const detail = error instanceof Error ? error.message.replaceAll("\n", " ").slice(0, 200) : "";
    return { ok: false, message: `The file is not JSON (${detail}): give an evidence file as JSON text.` };
  }
}

function whyUnreadable(error: unknown): string {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  switch (code) {
    case "ENOENT":
      return "There is no such file: check the path.";
    case "EISDIR":
      return "This is a folder: name the evidence file in it.";
    case "EACCES":
      return "The file may not be read: check its permissions.";
    case "ERR_ENCODING_INVALID_ENCODED_DATA":
      return "The file is not UTF-8 text: give an evidence file (JSON), not a binary one.";
    default:
      return `The file cannot be read (${String(code ?? error)}).`;
  }
}

function evaluateFiles(files: readonly string[]): void {
  const evaluated: ({ readonly file: string } & Evaluation)[] = [];
  const problems: Problem[] = [];
  for (const file of files) {
    const read = readJson(file);
    if (!read.ok) {
      problems.push({ file, path: "", message: read.message });
      continue;
    }
    const outcome = evaluateEvidence(read.input);
    if (outcome.ok) evaluated.push({ file, ...outcome.evaluation });
    else problems.push(...outcome.problems.map((problem) => ({ file, ...problem })));
  }
  if (problems.length > 0) {
    for (const problem of problems) process.stderr.write(`${JSON.stringify(problem)}\n`);
    process.exitCode = EXIT_REFUSED;
    return;
  }
  process.stdout.write(`${JSON.stringify({ files: evaluated }, null, 2)}\n`);
}

function refuseUsage(message: string): void {
  process.stderr.write(`${JSON.stringify({ file: null, path: "", message })}\n`);
  process.exitCode = EXIT_REFUSED;
}

// The reader of a pipe may stop early (head): that is no fault of ours.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

const parameters = process.argv.slice(2);
const unknown = parameters.find((p) => p.startsWith("-") && !["--help", "-h", "--schema"].includes(p));
if (parameters.includes("--help") || parameters.includes("-h")) process.stdout.write(HELP);
else if (unknown) refuseUsage(`There is no option ${unknown}: see --help.`);
else if (parameters.includes("--schema"))
  process.stdout.write(`${JSON.stringify(evidenceJsonSchema(), null, 2)}\n`);
else if (parameters.length === 0) refuseUsage("Name at least one evidence file: see --help.");
else evaluateFiles(parameters);
