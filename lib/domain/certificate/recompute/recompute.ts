import { evaluateEvidence } from "../../evidence/evaluate";
import type { Evaluation } from "../../evidence/evaluation";
import type { CertificateContent, CertificateRow } from "../content";
import type { DerivedMember } from "../derived-member";
import type { EvidenceFile, EvidencePart } from "../evidence-file/evidence-file";
import { compareDerived } from "./compare-derived";
import { compareFunction } from "./compare-function";
import { compareRows } from "./compare-rows";
import { agrees, type Comparison } from "./comparison";

/** What came of computing a document's figures again. */
export type Recomputation = {
  /** Why something could not be computed or does not belong together; where there is one, nothing is confirmed. */
  readonly problems: readonly string[];
  readonly comparisons: readonly Comparison[];
  /** Those of them that are printed otherwise than they come out. */
  readonly differences: readonly Comparison[];
};

type Step = Pick<Recomputation, "problems" | "comparisons"> & { readonly member: DerivedMember | null };
/** Tables of results that are done. */
export type Progress = { readonly done: number; readonly of: number };

/** A table of results of the document: of the certificate itself, or of one of its sets. */
type Measured = {
  readonly tag: string;
  readonly kind: EvidencePart["set"] | null;
  readonly run: string;
  readonly evidence: Pick<CertificateContent["evidence"], "engineVersion" | "inputsDigest" | "evaluation">;
  readonly rows: readonly CertificateRow[];
  readonly function?: CertificateContent["function"];
};

const measuredOf = (content: CertificateContent): readonly Measured[] =>
  content.sets
    ? content.sets.map((set) => ({ ...set, tag: set.item.tag, run: set.run.number }))
    : [{ ...content, kind: null, tag: content.item.tag, run: content.run.number }];

const partOf = ({ parts }: EvidenceFile, { tag, kind, run }: Measured): EvidencePart | undefined =>
  parts.find((part) => part.tag === tag && part.run === run && (kind === null || part.set === kind));

const mismatch = ({ evidence }: Measured, part: EvidencePart): string | null => {
  if (evidence.inputsDigest !== part.inputsDigest || evidence.evaluation !== part.evaluation)
    return `the evidence of ${part.tag} is of another evaluation than the certificate's`;
  return null;
};

const evaluated = (part: EvidencePart): { evaluation: Evaluation } | { problem: string } => {
  const outcome = evaluateEvidence(part.evidence);
  if (outcome.ok) return { evaluation: outcome.evaluation };
  const [first] = outcome.problems;
  return { problem: `the evidence of ${part.tag} cannot be evaluated: ${first?.path}: ${first?.message}` };
};

const failed = (problem: string): Step => ({ problems: [problem], comparisons: [], member: null });

/** In °C throughout: setpoints as the customer typed them are words here, not figures. */
const memberOf = (part: EvidencePart, points: Evaluation["points"]): DerivedMember => ({
  kind: part.set,
  sensorId: part.tag,
  parts: { points, sensor: { tag: part.tag }, order: { setpoints: [], temperatureUnit: "C" } },
});

const ofOne = (measured: Measured, part: EvidencePart, isOneOfSeveral: boolean): Step => {
  const told = mismatch(measured, part);
  if (told) return failed(told);
  const result = evaluated(part);
  if ("problem" in result) return failed(result.problem);
  const { points, functions } = result.evaluation;
  const own = points.filter(({ sensor }) => sensor === part.tag);
  const name = isOneOfSeveral ? `, ${part.tag}, ${part.set.replaceAll("-", " ")}, ${part.run}` : "";
  return {
    problems: [],
    member: memberOf(part, own),
    comparisons: [
      ...compareRows(`Results${name}`, measured.rows, own),
      ...(measured.function
        ? compareFunction(
            `Deviation function${name}`,
            measured.function,
            functions.find(({ sensor }) => sensor === part.tag),
          )
        : []),
    ],
  };
};

const collected = (content: CertificateContent, steps: readonly Step[]): Recomputation => {
  const problems = steps.flatMap((one) => one.problems);
  const members = steps.flatMap(({ member }) => member ?? []);
  const comparisons = [
    ...steps.flatMap((one) => one.comparisons),
    // Of part of its results a lot would come out otherwise for that reason alone.
    ...(problems.length > 0 ? [] : compareDerived(content, members)),
  ];
  return {
    problems,
    comparisons,
    differences: comparisons.filter((one) => !agrees(one)),
  };
};

/**
 * Every printed figure of a certificate computed again from its evidence, by the same engine that computed it: what it
 * proves is that paper and evidence belong together, not that the engine is right (the second evaluation in
 * tests/second-evaluation is for that). Yields after each table of results, so that a screen can go on meanwhile.
 */
export function* recomputing(
  content: CertificateContent,
  file: EvidenceFile,
): Generator<Progress, Recomputation> {
  if (file.certificate !== content.number) {
    const problem = `this is the evidence of certificate ${file.certificate}, not of ${content.number}`;
    return collected(content, [failed(problem)]);
  }
  const all = measuredOf(content);
  const steps: Step[] = [];
  for (const measured of all) {
    const part = partOf(file, measured);
    steps.push(
      part
        ? ofOne(measured, part, all.length > 1)
        : {
            problems: [`the evidence has nothing of ${measured.tag} in run ${measured.run}`],
            comparisons: [],
          },
    );
    yield { done: steps.length, of: all.length };
  }
  return collected(content, steps);
}

/** The same at one go. */
export const recompute = (content: CertificateContent, file: EvidenceFile): Recomputation => {
  const steps = recomputing(content, file);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
};
