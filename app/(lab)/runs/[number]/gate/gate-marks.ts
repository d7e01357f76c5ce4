import type { GateSeverity, GateVerdict } from "@/lib/domain/gate/assessment";

const marks = {
  refuse: { state: "fail", shape: "square", tone: "bad", label: "Must be mended" },
  overridable: { state: "not-decidable", shape: "open-diamond", tone: "watch", label: "Needs a reason" },
  warning: { state: "due", shape: "open-triangle", tone: "watch", label: "Warning" },
  ok: { state: "pass", shape: "disc", tone: "good", label: "Met" },
} as const satisfies Record<GateSeverity, object>;

/** A row or a heading by shape and word first; a row whose reason is given is set aside, not met. */
export const gateMark = (severity: GateSeverity, given: string | null = null) =>
  given === null
    ? marks[severity]
    : ({ state: "exception", shape: "half-disc", tone: "watch", label: "Set aside" } as const);

export const verdictWords: Readonly<Record<GateVerdict, string>> = {
  "may-start": "May start",
  "needs-reasons": "Needs reasons",
  refused: "Does not start",
};
