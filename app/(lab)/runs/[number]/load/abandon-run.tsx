import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { RunHead } from "@/lib/views/run/run-head";
import { abandonRunAction } from "../../actions";

/** For a run that comes to nothing before it is handed over. */
export function AbandonRun({ head }: { readonly head: RunHead }) {
  if (!head.mayWork || head.state === "returned") return null;
  return (
    <Section title="Abandon" id="abandon">
      <Disclosure summary="Abandon this run">
        <ActionForm action={abandonRunAction} label="Abandon this run">
          <input type="hidden" name="run" value={head.number} />
          <input type="hidden" name="version" value={head.version} />
          <TextArea
            name="reason"
            label="Why"
            hint="Its sensors wait for another run; what was read stays. A hot load is drawn out as your local rules and the furnace maker's manual say."
            rows={2}
          />
          <div className="form-actions">
            <SubmitButton kind="danger">Abandon the run</SubmitButton>
          </div>
        </ActionForm>
      </Disclosure>
    </Section>
  );
}
