import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { dayNames } from "@/lib/domain/promise/policy";
import { promisePolicyView } from "@/lib/views/promise/promise-policy";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { HoursForm } from "./hours-form";

export const metadata = { title: "Hours and rates" };

export default async function HoursPage() {
  const { policy, version, mayChange } = await load(promisePolicyView(await requireStaff()));
  const days = policy.workingDays.map((day) => dayNames[day - 1]).join(", ");
  return (
    <Page
      title="Hours and rates"
      crumbs={<Breadcrumb trail={[{ label: "The week", href: "/board" }]} />}
      lead="What a promised day is reckoned with where a furnace’s own record says nothing. Days that were promised keep what they were reckoned with."
    >
      <Section
        title="In force"
        note="Laboratory policy: the figures the platform comes with are common practice, no source, for the laboratory to confirm."
      >
        <FieldList
          columns
          items={[
            { label: "Somebody is there", value: `${policy.dayStartsHour} to ${policy.dayEndsHour} h UTC` },
            { label: "Working days", value: days },
            { label: "Evaluation and review", value: `${policy.reviewDays} working days` },
            { label: "Loading", value: `${policy.loadingHours} h` },
            { label: "At each setpoint", value: `${policy.dwellHours} h` },
            { label: "Places for references", value: policy.referencesPerLoad },
            { label: "Heats by", value: `${policy.rampUpCelsiusPerHour} °C/h` },
            { label: "Cools by", value: `${policy.rampDownCelsiusPerHour} °C/h` },
            { label: "Starts from", value: `${policy.ambientCelsius} °C` },
            { label: "Opened below", value: `${policy.openBelowCelsius} °C` },
          ]}
        />
      </Section>
      {mayChange ? (
        <Section title="Change them">
          <HoursForm policy={policy} version={version} />
        </Section>
      ) : null}
    </Page>
  );
}
