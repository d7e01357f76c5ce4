import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { TextField } from "@/app/_ui/text-field.client";

/**
 * The four questions of ISO/IEC 17025:2017, 7.1.1 a to d, each with a remark where there is something to say. `goesOut`: a
 * line is subcontracted. "None" is wrong then, and that the customer approves a person says: nothing is chosen beforehand.
 */
export function ReviewQuestions({ goesOut }: { readonly goesOut: boolean }) {
  return (
    <>
      <CheckboxField
        name="requirementsUnderstood"
        label="What the customer requires is defined, documented and understood."
      />
      <CheckboxField
        name="capabilityAndResources"
        label="The laboratory has the capability and the resources to meet it."
      />
      <ChoiceField
        name="externalProviders"
        legend="External providers"
        {...(goesOut ? {} : { defaultValue: "none" })}
        choices={[
          {
            value: "none",
            label: "None is used",
            hint: goesOut ? "A line of this order is subcontracted." : undefined,
          },
          { value: "approved", label: "The customer was told, and approves" },
        ]}
      />
      <CheckboxField
        name="methodSuitable"
        label="The method suits what is required: comparison in a tube furnace with platinum references."
      />
      <Disclosure summary="Remarks on these answers">
        <div className="stack">
          <TextField
            name="requirementsUnderstoodRemark"
            label="On the requirements"
            optional
            maxLength={500}
          />
          <TextField name="capabilityAndResourcesRemark" label="On the capability" optional maxLength={500} />
          <TextField name="externalProvidersRemark" label="On external providers" optional maxLength={500} />
          <TextField name="methodSuitableRemark" label="On the method" optional maxLength={500} />
        </div>
      </Disclosure>
    </>
  );
}
