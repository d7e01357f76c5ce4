import { StateMark } from "@/app/_ui/state-mark";
import { type DueState, dueLabels } from "@/lib/domain/calibration/due";
import { equipmentStateLabels } from "@/lib/domain/equipment/labels";
import type { EquipmentState } from "@/lib/domain/equipment/types";

export function DueMark({ due }: { readonly due: DueState }) {
  return <StateMark state={due === "none" ? "draft" : due} label={dueLabels[due]} />;
}

const shapes = {
  received: "draft",
  verified: "planned",
  "in-service": "done",
  suspect: "exception",
  "under-repair": "exception",
  retired: "cancelled",
} as const;

export function EquipmentStateMark({ state }: { readonly state: EquipmentState }) {
  return <StateMark state={shapes[state]} label={equipmentStateLabels[state]} />;
}
