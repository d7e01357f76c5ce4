import type { Bench } from "../bench";
import type { SetpointInWindow } from "../evaluate-point";
import type { EvaluatedPoint } from "../evaluation";
import type { Evidence } from "../schema";

/** What the findings are looked for in: the evidence and what came of it. */
export type FindingInput = {
  readonly evidence: Evidence;
  readonly bench: Bench;
  readonly setpoints: readonly SetpointInWindow[];
  readonly points: readonly EvaluatedPoint[];
};
