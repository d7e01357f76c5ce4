import { ok, type Result, refuse } from "../refusal";

export type OpenChange = {
  readonly changeId: string;
  readonly orderNumber: string;
  readonly sequence: number;
};

/**
 * A change of an order after work began is told to whoever does the work (ISO/IEC 17025:2017, 7.1.6): until a technician
 * has acknowledged it for this run, nothing more is taken into it.
 */
export const decideUndisturbed = (
  run: { readonly number: string },
  open: readonly OpenChange[],
): Result<"undisturbed"> => {
  if (open.length === 0) return ok("undisturbed");
  const orders = [...new Set(open.map(({ orderNumber }) => orderNumber))];
  return refuse(
    "rule",
    `Run ${run.number} stands still: order ${orders.join(", ")} was changed after the run was made. Read the change at the head of the run and acknowledge it. Nothing was stored.`,
  );
};
