import { FieldList } from "@/app/_ui/field-list";
import { Section } from "@/app/_ui/section";
import type { CharacterisationRunView } from "@/lib/views/characterisation-run";

/** The plan as it was made: it stays while its surveys are measured. */
export function PlanFacts({ view }: { readonly view: CharacterisationRunView }) {
  const { plan } = view;
  return (
    <Section title="Plan">
      <FieldList
        items={[
          { label: "Temperatures", value: `${plan.temperatures.join(", ")} °C` },
          {
            label: "Stated length",
            value: `${plan.toMillimetre - plan.fromMillimetre} mm, from ${plan.fromMillimetre} to ${plan.toMillimetre} mm deep`,
          },
          { label: "Window", value: `${plan.windowMinutes} min` },
          {
            label: "Probe",
            value: `${plan.probe}, type ${plan.probeType}, ± ${plan.probeInhomogeneityPercent} %`,
          },
          { label: "Monitor", value: `${plan.monitor}, type ${plan.monitorType}` },
          { label: "One reading against the next", value: `u = ${plan.meterMicrovolt} µV` },
        ]}
      />
    </Section>
  );
}
