import type { Doubt } from "../equipment/doubt";
import { ok, type Result, refuse } from "../refusal";

/** A standard or instrument of a run, its furnace included, that is in doubt now. */
export type InDoubt = Doubt & { readonly id: string; readonly tag: string; readonly state: string };

export const doubtWords = ({ tag, state, report }: InDoubt): string =>
  `${tag} is in doubt (${[state.replace("-", " "), ...(report ? [report] : [])].join(", ")})`;

const remedy = ({ tag, report }: InDoubt): string =>
  report
    ? `record in ${report} what that does to results`
    : `report nonconforming work on ${tag} under Quality, and record there what it does to results`;

/**
 * ISO/IEC 17025 6.4.9, 7.10.1 c: what stands on equipment in doubt is not released until somebody has examined what that
 * does to it. Whoever finds that it does holds the work; otherwise it goes on.
 */
export const decideNotInDoubt = (equipment: readonly InDoubt[]): Result<null> => {
  const unexamined = equipment.filter(({ isExamined }) => !isExamined);
  if (unexamined.length === 0) return ok(null);
  return refuse(
    "rule",
    `${unexamined.map(doubtWords).join("; ")}. These results stand on it, and nobody has examined them for it; nothing is signed off until then. Settle the doubt first: ${unexamined.map(remedy).join("; ")}. Then hold what it concerns, and sign the rest.`,
  );
};
