import { ActionForm } from "@/app/_ui/action-form.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { equipmentStateLabels } from "@/lib/domain/equipment/labels";
import type { Equipment, EquipmentState } from "@/lib/domain/equipment/types";
import { setEquipmentStateAction } from "./actions";

type Props = { readonly equipment: Equipment; readonly states: readonly EquipmentState[] };

/** Only the steps that would be taken are offered; into `verified` it comes by its logbook. */
export function StateForm({ equipment, states }: Props) {
  return (
    <ActionForm action={setEquipmentStateAction} label="Set its state">
      <input type="hidden" name="id" value={equipment.id} />
      <input type="hidden" name="version" value={equipment.version} />
      <SelectField
        name="state"
        label="Next step"
        prompt="Choose the new state"
        choices={states.map((state) => ({ value: state, label: equipmentStateLabels[state] }))}
      />
      <TextField name="reason" label="Why" />
      <div className="form-actions">
        <SubmitButton kind="quiet">Set the state</SubmitButton>
      </div>
    </ActionForm>
  );
}
