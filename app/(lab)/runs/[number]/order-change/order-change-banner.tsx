import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Notice } from "@/app/_ui/notice";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { acknowledgeChangeAction } from "@/app/(lab)/orders/[number]/contract/actions";
import { SnapshotTable } from "@/app/(lab)/orders/[number]/contract/snapshot-table";
import type { RunHead } from "@/lib/views/run/run-head";

type Props = { readonly run: string; readonly mayWork: boolean; readonly changes: RunHead["orderChanges"] };

/** An order in the load was changed: the run stands still until whoever works on it has read what changed (7.1.6). */
export function OrderChangeBanner({ run, mayWork, changes }: Props) {
  return changes.map((change) => (
    <Notice
      key={change.changeId}
      kind="caution"
      title={`Caution: order ${change.orderNumber} was changed; this run stands still`}
    >
      <div className="stack">
        <p>
          <Link href={`/orders/${change.orderNumber}`}>Order {change.orderNumber}</Link>, change{" "}
          {change.sequence}, <Timestamp at={change.at} />: {change.reason}
        </p>
        <SnapshotTable caption="What changed." differences={change.differences} />
        {mayWork ? (
          <ActionForm action={acknowledgeChangeAction} shape="inline" label="Acknowledge the change">
            <input type="hidden" name="run" value={run} />
            <input type="hidden" name="changeId" value={change.changeId} />
            <SubmitButton pending="Acknowledging…">I have read it: go on</SubmitButton>
          </ActionForm>
        ) : (
          <p className="quiet">A technician acknowledges it.</p>
        )}
      </div>
    </Notice>
  ));
}
