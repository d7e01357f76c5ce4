import { DateField } from "@/app/_ui/date-field.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { decisionRuleLabels, decisionRules, urgencies, urgencyLabels } from "@/lib/domain/order/labels";
import { ruleSetLabels, ruleSets } from "@/lib/domain/order/rule-set";
import { CapabilityAnswers } from "./capability/capability-answers.client";
import { emptyLine, type LineDraft } from "./line-draft";
import type { Providers } from "./line-options-fields.client";
import { LinesEditor } from "./lines-editor.client";

type Order = {
  readonly purchaseOrder: string;
  readonly decisionRule: string;
  readonly guardBandRatio: string;
  readonly falseAcceptancePercent: string;
  readonly decisionRuleAgreedBy: string;
  readonly decisionRuleAgreedOn: string;
  readonly uncertaintyDigits: string;
  readonly note: string;
  readonly urgency: string;
  readonly ruleSet: string;
  readonly lines: readonly LineDraft[];
};

const ruleChoices = decisionRules.map((rule) => ({ value: rule, label: decisionRuleLabels[rule] }));
const urgencyChoices = urgencies.map((value) => ({ value, label: urgencyLabels[value] }));
const ruleSetChoices = ruleSets.map((value) => ({ value, label: ruleSetLabels[value] }));
const digitChoices = [
  { value: "2", label: "Two" },
  { value: "1", label: "One" },
];

type Props = { readonly order?: Order; readonly providers: Providers };

/** The fields that recording, amending and changing share. */
export function OrderFields({ order, providers }: Props) {
  return (
    <>
      <div className="fields">
        <TextField
          name="purchaseOrder"
          label="Customer’s order number"
          optional
          maxLength={80}
          defaultValue={order?.purchaseOrder}
        />
        <SelectField
          name="urgency"
          label="Urgency"
          choices={urgencyChoices}
          defaultValue={order?.urgency ?? "standard"}
        />
        <SelectField
          name="ruleSet"
          label="Rule set the customer is audited by"
          choices={ruleSetChoices}
          defaultValue={order?.ruleSet ?? "none"}
          hint="Audited heat treatment: each line states its largest interval, each sensor its lot and roll, and nothing is stated beyond the setpoints."
        />
      </div>
      <LinesEditor initial={order?.lines ?? [emptyLine]} providers={providers} />
      <FieldGroup
        legend="Statement of conformity"
        hint="A statement needs a tolerance on a line and a rule the customer agreed to before the measurement. Who and when may follow, but before the order is accepted."
      >
        <SelectField
          name="decisionRule"
          label="Decision rule"
          choices={ruleChoices}
          defaultValue={order?.decisionRule ?? "none"}
        />
        <div className="fields">
          <NumberField
            name="guardBandRatio"
            label="Guard band"
            unit="× U"
            optional
            hint="For the guarded rules only; 1 is usual."
            defaultValue={order?.guardBandRatio}
          />
          <NumberField
            name="falseAcceptancePercent"
            label="False acceptance at most"
            unit="%"
            optional
            hint="For the target risk only."
            // A rule by another figure keeps none: amending it to a target risk starts from the usual 5 % again.
            defaultValue={order?.falseAcceptancePercent || "5"}
          />
          <TextField
            name="decisionRuleAgreedBy"
            label="Agreed by"
            hint="The customer’s person."
            optional
            defaultValue={order?.decisionRuleAgreedBy}
          />
          <DateField
            name="decisionRuleAgreedOn"
            label="Agreed on"
            optional
            defaultValue={order?.decisionRuleAgreedOn}
          />
        </div>
      </FieldGroup>
      <CapabilityAnswers />
      <SelectField
        name="uncertaintyDigits"
        label="Significant digits of U on the certificate"
        choices={digitChoices}
        defaultValue={order?.uncertaintyDigits ?? "2"}
      />
      <TextArea name="note" label="Note for the laboratory" optional rows={3} defaultValue={order?.note} />
    </>
  );
}
