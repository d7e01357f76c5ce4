import { StateMark } from "@/app/_ui/state-mark";
import { type Standing, standingLabels } from "@/lib/domain/certificate/standing";

const marks = {
  pending: "pending",
  valid: "issued",
  amended: "superseded",
  replaced: "superseded",
  withdrawn: "withdrawn",
} as const satisfies Readonly<Record<Standing["kind"], string>>;

/** What became of a certificate, with the number of the one that counts instead. */
export function StandingMark({ standing }: { readonly standing: Standing }) {
  const { kind } = standing;
  const by = kind === "amended" || kind === "replaced" ? ` by ${standing.successor}` : "";
  return <StateMark state={marks[kind]} label={`${standingLabels[kind]}${by}`} />;
}
