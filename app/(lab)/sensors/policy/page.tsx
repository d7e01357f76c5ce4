import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { policyTypes } from "@/lib/domain/intake/policy";
import { intakePolicyView } from "@/lib/views/sensor/intake-policy";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { PolicyForm } from "./policy-form";

export const metadata = { title: "Limits of intake" };

export default async function IntakePolicyPage() {
  const actor = await requireStaff();
  const { policy, version, mayChange } = await load(intakePolicyView(actor));
  const least = policy.leastInsulationMegaohm;
  return (
    <Page
      title="Limits of intake"
      crumbs={<Breadcrumb trail={[{ label: "Sensors", href: "/sensors" }]} />}
      lead="What a sensor is held against when it is taken in. A check outside its limit is a deviation: the sensor waits until the customer has answered (ISO/IEC 17025, 7.4.3)."
    >
      <Section
        title="In force"
        note="Laboratory policy, no source: the figures the platform comes with are from memory, for the laboratory to confirm."
      >
        <FieldList
          columns
          items={[
            { label: "Insulation, new", value: `at least ${least.new} MΩ` },
            { label: "Insulation, used", value: `at least ${least.used} MΩ` },
            { label: "Insulation, not known", value: `at least ${least.notKnown} MΩ` },
            { label: "Loop against expected", value: `± ${policy.loopTolerancePercent} %` },
            { label: "Loop at most", value: `${policy.largestLoopOhm} Ω` },
            ...policyTypes.map((type) => ({
              label: `Both wires, type ${type}`,
              value: `${policy.pairResistivityMicroohmMetre[type]} µΩ·m`,
            })),
          ]}
        />
      </Section>
      {mayChange ? (
        <Section title="Change them">
          <PolicyForm policy={policy} version={version} />
        </Section>
      ) : null}
    </Page>
  );
}
