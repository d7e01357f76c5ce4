import { readFileSync, statSync } from "node:fs";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { EvaluatedPoint, Evaluation, EvidenceProblem } from "@/lib/domain/evidence/evaluation";
import { evidenceJsonSchema } from "@/lib/domain/evidence/json-schema";
import {
  type MonteCarloChoice,
  type PointMonteCarlo,
  pointMonteCarlo,
} from "@/lib/domain/evidence/point-monte-carlo";
import { evaluateArguments } from "./evaluate-arguments";

const HELP = `Evaluates evidence files and prints the results as JSON.

  npm run --silent evaluate -- FILE.json [FILE.json …]
  npm run --silent evaluate -- FILE.json --monte-carlo [TRIALS | adaptive] [--seed N]
  npm run --silent evaluate -- --schema    the JSON Schema of the evidence file
  npm run --silent evaluate -- --help

Output: { "files": [ { "file", "engineVersion", "points", "functions", "findings" } ] }.
Each point has every number unrounded, and under "printed" as a document shows it.
With --monte-carlo each measured point also has "monteCarlo": its budget with every line drawn from its
distribution (JCGM 101:2008), and under "gum" whether that bears the point's own U out (clause 8). 1 000 000
trials unless told, seed 1 unless told; the same seed gives the same bits.
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

/** Trials of an adaptive run end here, settled or not. */
const ADAPTIVE_WORKSPACE = 5_000_000;

type DrawnPoint = EvaluatedPoint & { readonly monteCarlo?: PointMonteCarlo };
type Drawn = Omit<Evaluation, "points"> & { readonly points: readonly DrawnPoint[] };

/** Each measured point with its budget drawn from the distributions; a stream of its own for each. */
function withMonteCarlo(evaluation: Evaluation, choice: MonteCarloChoice): Drawn | EvidenceProblem {
  const { trials } = choice;
  const workspace = new Float64Array(trials.kind === "fixed" ? trials.count : ADAPTIVE_WORKSPACE);
  const points: DrawnPoint[] = [];
  for (const [stream, point] of evaluation.points.entries()) {
    if (point.state !== "measured") {
      points.push(point);
      continue;
    }
    const drawn = pointMonteCarlo(point, stream, choice, workspace);
    if (!drawn.ok)
      return { path: "", message: `${point.sensor} at ${point.setpoint}: ${drawn.problem.message}` };
    points.push({ ...point, monteCarlo: drawn.value });
  }
  return { ...evaluation, points };
}

function evaluateFiles(files: readonly string[], monteCarlo: MonteCarloChoice | null): void {
  const evaluated: ({ readonly file: string } & Drawn)[] = [];
  const problems: Problem[] = [];
  for (const file of files) {
    const read = readJson(file);
    if (!read.ok) {
      problems.push({ file, path: "", message: read.message });
      continue;
    }
    const outcome = evaluateEvidence(read.input);
    if (!outcome.ok) {
      problems.push(...outcome.problems.map((problem) => ({ file, ...problem })));
      continue;
    }
    const drawn = monteCarlo ? withMonteCarlo(outcome.evaluation, monteCarlo) : outcome.evaluation;
    if ("message" in drawn) problems.push({ file, ...drawn });
    else evaluated.push({ file, ...drawn });
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

const asked = evaluateArguments(process.argv.slice(2));
switch (asked.kind) {
  case "help":
    process.stdout.write(HELP);
    break;
  case "schema":
    process.stdout.write(`${JSON.stringify(evidenceJsonSchema(), null, 2)}\n`);
    break;
  case "refused":
    refuseUsage(asked.message);
    break;
  case "evaluate":
    evaluateFiles(asked.files, asked.monteCarlo);
}
