import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { newRunView } from "@/lib/views/run/new-run";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ChooseForm } from "./choose-form";
import { LoadForm } from "./load-form";
import { NotOffered } from "./not-offered";

export const metadata = { title: "Plan a run" };

type Query = Readonly<Record<string, string | string[] | undefined>>;
type Props = { readonly searchParams: Promise<Query> };

const listOf = (value: string | string[] | undefined): readonly string[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value];

export default async function NewRunPage({ searchParams }: Props) {
  const actor = await requirePermission("run.perform");
  const view = await load(newRunView(actor, new Date()));
  const query = await searchParams;
  const sensors = view.waiting.filter(
    ({ tag, nextSet }) => nextSet !== null && listOf(query.sensor).includes(tag),
  );
  const references = view.references.filter(({ tag }) => listOf(query.reference).includes(tag));
  const isChosen = sensors.length > 0 && references.length > 0;
  // Boxes that are not ticked leave nothing in the address: the form says by itself that it was sent.
  const asked = query.sent !== undefined || query.sensor !== undefined || query.reference !== undefined;
  return (
    <Page
      title="Plan a run"
      crumbs={<Breadcrumb trail={[{ label: "Runs", href: "/runs" }]} />}
      lead={
        isChosen
          ? "Give each its place, its channel and its reference junction; then the run is made and its sensors are loaded."
          : "Choose what goes into the furnace together."
      }
    >
      {asked && !isChosen ? (
        <Notice kind="caution">
          Nothing is placed yet. {sensors.length === 0 ? "Tick at least one sensor. " : null}
          {references.length === 0 ? "Tick at least one reference." : null}
        </Notice>
      ) : null}
      {isChosen ? (
        <LoadForm view={view} sensors={sensors} references={references} />
      ) : (
        <ChooseForm view={view} chosen={[...listOf(query.sensor), ...listOf(query.reference)]} />
      )}
      <NotOffered equipment={view.notOffered} />
    </Page>
  );
}
