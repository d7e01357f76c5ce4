import { StateMark } from "@/app/_ui/state-mark";
import type { Acceptance } from "@/lib/domain/calibration/acceptance";
import { acceptanceLabels } from "@/lib/domain/calibration/labels";

const marks = { waiting: "waiting", accepted: "done", rejected: "withdrawn" } as const;

export function CalibrationMark({ acceptance }: { readonly acceptance: Acceptance }) {
  return <StateMark state={marks[acceptance]} label={acceptanceLabels[acceptance]} />;
}
