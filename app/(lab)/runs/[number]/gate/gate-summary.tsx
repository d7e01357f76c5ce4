import { ActionForm } from "@/app/_ui/action-form.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { RunGateView } from "@/lib/views/run/run-gate";
import css from "../../runs.module.css";
import { passGateAction } from "./actions";
import { verdictWords } from "./gate-marks";

type FigureProps = { readonly value: string; readonly label: string };

const Figure = ({ value, label }: FigureProps) => (
  <div>
    <span className={css.figure}>{value}</span>
    <span className={css.label}>{label}</span>
  </div>
);

/** Read from two metres: may it start, and if not, how much stands in the way. */
export function GateSummary({ view }: { readonly view: RunGateView }) {
  const { counts, head } = view;
  return (
    <>
      <div className={css.far} role="status">
        <Figure value={verdictWords[view.verdict]} label={`Gate of ${view.day}`} />
        <Figure value={String(counts.toMend)} label="Must be mended" />
        <Figure value={String(counts.reasonsLacking)} label="Need a reason" />
        <Figure value={String(counts.warnings)} label="Warnings" />
      </div>
      {head.mayWork && head.orderChanges.length > 0 ? (
        <p className="quiet">It can be started once the change above is acknowledged.</p>
      ) : head.mayWork ? (
        <ActionForm action={passGateAction} label="Start the run">
          <input type="hidden" name="run" value={head.number} />
          <p className="quiet">
            With this the furnace may be heated. Every rule is looked at once more, and kept as it stands;
            load and setpoints stay as they are from here on.
          </p>
          <div className="form-actions">
            <SubmitButton
              size="bench"
              kind={view.verdict === "may-start" ? "primary" : "quiet"}
              pending="Looking…"
            >
              Start the run
            </SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </>
  );
}
