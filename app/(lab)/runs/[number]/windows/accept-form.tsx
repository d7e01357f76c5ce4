import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { RunWindowsView } from "@/lib/views/run/run-windows";
import { acceptWindowAction } from "../../actions";

type Setpoint = RunWindowsView["setpoints"][number];
type Props = { readonly view: RunWindowsView; readonly setpoint: Setpoint };

const hidden = (view: RunWindowsView, setpoint: Setpoint) => (
  <>
    <input type="hidden" name="run" value={view.head.number} />
    <input type="hidden" name="setpoint" value={setpoint.position} />
    <input type="hidden" name="blocksDigest" value={view.blocksDigest} />
  </>
);

/** The proposed window with one press; or ends of one's own. */
export function AcceptForm({ view, setpoint }: Props) {
  const { proposal, accepted } = setpoint;
  const ends = accepted ?? (proposal.kind === "proposed" ? proposal.window : null);
  return (
    <>
      {proposal.kind === "proposed" && !accepted ? (
        <ActionForm
          action={acceptWindowAction}
          shape="inline"
          label={`Accept the window at ${setpoint.celsius} °C`}
        >
          {hidden(view, setpoint)}
          <input type="hidden" name="fromSeconds" value={proposal.window.fromSeconds} />
          <input type="hidden" name="toSeconds" value={proposal.window.toSeconds} />
          <SubmitButton size="bench">Accept the proposed window</SubmitButton>
        </ActionForm>
      ) : null}
      <Disclosure summary={accepted ? "Move the window" : "Set other ends"}>
        <ActionForm action={acceptWindowAction} label={`Move the window at ${setpoint.celsius} °C`}>
          {hidden(view, setpoint)}
          <div className="fields">
            <NumberField name="fromSeconds" label="From" unit="s" defaultValue={ends?.fromSeconds} />
            <NumberField name="toSeconds" label="To" unit="s" defaultValue={ends?.toSeconds} />
          </div>
          <TextField
            name="reason"
            label="Why, if it does not meet the criterion"
            optional
            maxLength={600}
            hint="The signatory sees it."
          />
          <div className="form-actions">
            <SubmitButton kind="quiet">Judge and accept</SubmitButton>
          </div>
        </ActionForm>
      </Disclosure>
    </>
  );
}
