import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Disclosure } from "@/app/_ui/disclosure";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { isoDay } from "@/lib/domain/calibration/due";
import { inhomogeneityTestsView } from "@/lib/views/inhomogeneity-tests";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { BathCaution } from "../bath-caution";
import { InhomogeneityForm } from "../inhomogeneity-form";
import { InhomogeneityList } from "../inhomogeneity-list";

export const metadata = { title: "Inhomogeneity tests" };

export default async function InhomogeneityPage() {
  const actor = await requireStaff();
  const view = await load(inhomogeneityTestsView(actor));
  return (
    <Page
      title="Inhomogeneity tests"
      crumbs={<Breadcrumb trail={[{ label: "Furnaces", href: "/furnaces" }]} />}
      lead="A thermocouple moved through a gradient shows what its wires add piece by piece. Accepted by another person, its spread replaces the assumed rule in the budgets of runs made from then on."
    >
      <Section title="Tests" wide>
        <InhomogeneityList tests={view.tests} />
      </Section>
      {view.mayRecord ? (
        <Disclosure summary="Record a test" open={view.tests.length === 0}>
          <BathCaution />
          <InhomogeneityForm today={isoDay(new Date())} />
        </Disclosure>
      ) : null}
    </Page>
  );
}
