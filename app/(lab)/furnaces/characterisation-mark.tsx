import { StateMark } from "@/app/_ui/state-mark";
import type { DueState } from "@/lib/domain/calibration/due";

const labels: Readonly<Record<DueState, string>> = {
  "in-date": "Characterised",
  due: "Characterisation ends within 30 days",
  "out-of-date": "Characterisation no longer valid",
  none: "Not characterised",
};

export function CharacterisationMark({ due }: { readonly due: DueState }) {
  return <StateMark state={due === "none" ? "draft" : due} label={labels[due]} />;
}
