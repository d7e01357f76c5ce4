import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { isoDay } from "@/lib/domain/calibration/due";
import { furnaceView } from "@/lib/views/furnace";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { OrdersNote } from "../../../orders-note";
import { PlanForm } from "../../../plan-form";

export const metadata = { title: "Plan a characterisation" };

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly configuration?: string | string[] }>;
};

export default async function NewCharacterisationPage({ params, searchParams }: Props) {
  const actor = await requirePermission("furnace.record");
  const furnace = await load(furnaceView(actor, (await params).id, isoDay(new Date())));
  const asked = (await searchParams).configuration;
  const configuration =
    furnace.configurations.find(({ id }) => id === asked) ?? furnace.configurations[0] ?? null;
  const trail = [
    { label: "Furnaces", href: "/furnaces" },
    { label: furnace.tag, href: `/furnaces/${furnace.id}` },
  ];
  return (
    <Page
      title={configuration ? `Plan a characterisation of ${configuration.name}` : "Plan a characterisation"}
      crumbs={<Breadcrumb trail={trail} />}
      lead="At each temperature: axial uniformity, differences between positions, stability over time; immersion where it may matter. Nothing is carried beyond the temperatures that are measured."
    >
      {configuration ? (
        <>
          <OrdersNote kind={configuration.kind} />
          <PlanForm furnace={furnace} configuration={configuration} />
        </>
      ) : (
        <Notice kind="info">Record a configuration of this furnace first.</Notice>
      )}
    </Page>
  );
}
