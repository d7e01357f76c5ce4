import { Shape, type ShapeName } from "@/app/_ui/shape";

export type Tone = "good" | "watch" | "bad" | "heat" | "rest" | "plain";

type Mark = { readonly shape: ShapeName; readonly tone: Tone; readonly label: string };

/** Round for well, square for not, half for conditional, diamond for undecided, triangle for look here. */
const marks = {
  // conformity
  pass: { shape: "disc", tone: "good", label: "Pass" },
  "conditional-pass": { shape: "half-disc", tone: "good", label: "Conditional pass" },
  "conditional-fail": { shape: "half-square", tone: "bad", label: "Conditional fail" },
  fail: { shape: "square", tone: "bad", label: "Fail" },
  "not-decidable": { shape: "open-diamond", tone: "watch", label: "Not decidable" },
  "no-tolerance-defined": { shape: "dotted-ring", tone: "rest", label: "No tolerance defined" },
  "no-statement": { shape: "dash", tone: "rest", label: "No statement" },
  // against the laboratory's accredited scope
  "inside-scope": { shape: "disc", tone: "plain", label: "In scope" },
  "outside-scope": { shape: "open-square", tone: "watch", label: "† Outside scope" },
  // dates
  "in-date": { shape: "disc", tone: "good", label: "In date" },
  due: { shape: "open-triangle", tone: "watch", label: "Due soon" },
  "out-of-date": { shape: "square", tone: "bad", label: "Out of date" },
  // a sensor at a setpoint
  measured: { shape: "disc", tone: "plain", label: "Measured" },
  invalid: { shape: "open-square", tone: "bad", label: "Invalid" },
  "not-reached": { shape: "dotted-ring", tone: "watch", label: "Not reached" },
  // stability
  stable: { shape: "disc", tone: "good", label: "Stable" },
  unstable: { shape: "open-triangle", tone: "watch", label: "Not stable" },
  // work
  draft: { shape: "dotted-ring", tone: "rest", label: "Draft" },
  open: { shape: "ring", tone: "plain", label: "Open" },
  waiting: { shape: "ring", tone: "watch", label: "Waiting" },
  active: { shape: "bead", tone: "heat", label: "In progress" },
  returned: { shape: "half-square", tone: "watch", label: "Returned" },
  done: { shape: "disc", tone: "plain", label: "Done" },
  cancelled: { shape: "dash", tone: "rest", label: "Cancelled" },
  // mail
  failing: { shape: "open-triangle", tone: "watch", label: "Trying again" },
  "given-up": { shape: "square", tone: "bad", label: "Not sent" },
  sent: { shape: "disc", tone: "good", label: "Sent" },
  // certificates and evidence
  pending: { shape: "dotted-ring", tone: "watch", label: "Pending" },
  issued: { shape: "disc", tone: "good", label: "Issued" },
  superseded: { shape: "half-disc", tone: "rest", label: "Superseded" },
  withdrawn: { shape: "square", tone: "bad", label: "Withdrawn" },
  verified: { shape: "disc", tone: "good", label: "Verifies" },
  broken: { shape: "square", tone: "bad", label: "Broken" },
  exception: { shape: "triangle", tone: "watch", label: "Exception" },
} as const satisfies Readonly<Record<string, Mark>>;

export type StateName = keyof typeof marks;

type Props = {
  /** A name of the state alphabet; any other string shows as an open ring with its label. */
  readonly state: StateName | (string & {});
  /** The word; the alphabet's own word unless told. */
  readonly label?: string;
  readonly shape?: ShapeName;
  readonly tone?: Tone;
};

const markOf = (state: string): Mark =>
  Object.hasOwn(marks, state)
    ? marks[state as StateName]
    : { shape: "ring", tone: "plain", label: state.replaceAll("-", " ") };

/** State by word and shape first, colour second. */
export function StateMark({ state, label, shape, tone }: Props) {
  const mark = markOf(state);
  return (
    <span className="state" data-tone={tone ?? mark.tone} data-state={state}>
      <Shape name={shape ?? mark.shape} />
      <span>{label ?? mark.label}</span>
    </span>
  );
}
