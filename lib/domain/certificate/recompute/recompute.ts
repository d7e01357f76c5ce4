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

type SetKind = EvidencePart["items"][number]["set"];

/** A table of results of the document: of the certificate itself, or of one of its sets. */
type Measured = {
  readonly tag: string;
  readonly kind: SetKind | null;
  readonly run: string;
  readonly evidence: Pick<CertificateContent["evidence"], "engineVersion" | "inputsDigest" | "evaluation">;
  readonly rows: readonly CertificateRow[];
  readonly function?: CertificateContent["function"];
};

/** Where its evidence is: the part of its run, and as which set the sensor is there. */
type Place = { readonly part: EvidencePart; readonly set: SetKind };
type Evaluated = { readonly evaluation: Evaluation } | { readonly problem: string };

const measuredOf = (content: CertificateContent): readonly Measured[] =>
  content.sets
    ? content.sets.map((set) => ({ ...set, tag: set.item.tag, run: set.run.number }))
    : [{ ...content, kind: null, tag: content.item.tag, run: content.run.number }];

const placeOf = ({ parts }: EvidenceFile, { tag, kind, run }: Measured): Place | null => {
  for (const part of parts) {
    const item = part.items.find((one) => one.tag === tag && (kind === null || one.set === kind));
    if (item && part.run === run) return { part, set: item.set };
  }
  return null;
};

const evaluate = ({ run, evidence }: EvidencePart): Evaluated => {
  const outcome = evaluateEvidence(evidence);
  if (outcome.ok) return { evaluation: outcome.evaluation };
  const [first] = outcome.problems;
  return { problem: `the evidence of run ${run} cannot be evaluated: ${first?.path}: ${first?.message}` };
};

const failed = (problem: string): Step => ({ problems: [problem], comparisons: [], member: null });

const ofOne = (
  measured: Measured,
  { part, set }: Place,
  evaluated: Evaluated,
  isOneOfSeveral: boolean,
): Step => {
  const { tag, run, evidence } = measured;
  if (evidence.inputsDigest !== part.inputsDigest || evidence.evaluation !== part.evaluation)
    return failed(`the evidence of ${tag} is of another evaluation than the certificate's`);
  if ("problem" in evaluated) return failed(evaluated.problem);
  const { points, functions } = evaluated.evaluation;
  const own = points.filter(({ sensor }) => sensor === tag);
  const name = isOneOfSeveral ? `, ${tag}, ${set.replaceAll("-", " ")}, ${run}` : "";
  const again = functions.find(({ sensor }) => sensor === tag);
  return {
    problems: [],
    member: {
      ...{ kind: set, sensorId: tag },
      // In °C throughout: setpoints as the customer typed them are words here, not figures.
      parts: { points: own, sensor: { tag }, order: { setpoints: [], temperatureUnit: "C" } },
    },
    comparisons: [
      ...compareRows(`Results${name}`, measured.rows, own),
      ...(measured.function ? compareFunction(`Deviation function${name}`, measured.function, again) : []),
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
  // Once a part, however many tables rest on it.
  const evaluations = new Map<EvidencePart, Evaluated>();
  for (const measured of all) {
    const place = placeOf(file, measured);
    if (place) {
      const evaluated = evaluations.get(place.part) ?? evaluate(place.part);
      evaluations.set(place.part, evaluated);
      steps.push(ofOne(measured, place, evaluated, all.length > 1));
    } else steps.push(failed(`the evidence has nothing of ${measured.tag} in run ${measured.run}`));
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
