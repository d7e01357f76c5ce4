import type { Bench } from "../bench";
import type { EvaluatedPoint } from "../evaluation";
import type { Evidence } from "../schema";
import type { SetpointInWindow } from "../setpoint-windows";

/** What the findings are looked for in: the evidence and what came of it. */
export type FindingInput = {
  readonly evidence: Evidence;
  readonly bench: Bench;
  readonly setpoints: readonly SetpointInWindow[];
  readonly points: readonly EvaluatedPoint[];
};
