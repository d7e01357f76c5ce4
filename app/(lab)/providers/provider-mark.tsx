import { StateMark } from "@/app/_ui/state-mark";
import { providerStateLabels } from "@/lib/domain/provider/labels";
import type { Provider } from "@/lib/domain/provider/types";

const marks = { candidate: "draft", approved: "done", suspended: "exception" } as const;

type Props = {
  readonly provider: Pick<Provider, "state" | "approvedUntil">;
  readonly today: string;
};

/** Its state by word and shape; an approval that has run out says so. */
export function ProviderMark({ provider: { state, approvedUntil }, today }: Props) {
  if (state === "approved" && approvedUntil !== null && approvedUntil < today)
    return <StateMark state="out-of-date" label={`Approved until ${approvedUntil}`} />;
  return <StateMark state={marks[state]} label={providerStateLabels[state]} />;
}
